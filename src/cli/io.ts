/**
 * cli/ is the command line: one file a verb. It reads files and arguments, asks the core, and prints. Exit codes: 0 well,
 * 1 findings at or above --fail-on, 2 bad input with its reason on stderr, 3 a mistake of the program.
 */

/** Where a run writes to. */
export interface Io {
  out(text: string): void;
  err(text: string): void;
}

/** Something a person can put right; its message is one or two plain sentences. */
export class BadInput extends Error {}

/** One JSON document. */
export function printJson(io: Io, value: unknown): void {
  io.out(`${JSON.stringify(value, null, 2)}\n`);
}
