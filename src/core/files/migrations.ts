import type { ParsedJson } from './json.ts';

/** One step from a past version of the format to the next, named for what changed. It gets and gives plain JSON. */
export interface Migration {
  readonly from: number;
  /** As told to people: "Gaps are measured inside to inside". */
  readonly title: string;
  change(file: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>>;
}

/** All steps, oldest first. Version 1 is the first, so there are none. A file of each past version lies in seeds/old/. */
export const MIGRATIONS: readonly Migration[] = [];

/** The file in the form of the given version, with the titles of the steps that were taken. */
export function migrate(
  file: Readonly<Record<string, unknown>>,
  from: number,
  { to, steps }: { readonly to: number; readonly steps: readonly Migration[] },
):
  | (Extract<ParsedJson, { kind: 'read' }> & { readonly repairs: readonly string[] })
  | Extract<ParsedJson, { kind: 'refused' }> {
  let now = file;
  const repairs: string[] = [];
  for (let version = from; version < to; version += 1) {
    const step = steps.find((each) => each.from === version);
    if (step === undefined) {
      return {
        kind: 'refused',
        why: `The file has version ${from}, which this program does not know; it reads ${to}.`,
      };
    }
    now = { ...step.change(now), version: version + 1 };
    repairs.push(`Brought from version ${version} to ${version + 1}: ${step.title}.`);
  }
  return { kind: 'read', value: now, repairs };
}
