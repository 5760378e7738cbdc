import type { Course } from '../../core/course/course.ts';
import { currentLayout } from '../../core/course/course.ts';
import type { SetOutPart } from '../../core/setout/setout.ts';

/** Numbers that differ by less are the same in a print: a file keeps no more. Metres and radians. */
const FINEST = 1e-6;

/** Plain data as one text, whatever the order of its keys. */
function canonicalText(value: unknown): string {
  if (typeof value === 'number') return String(Math.round(value / FINEST));
  if (Array.isArray(value)) return `[${value.map(canonicalText).join()}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? '';
  const entries = Object.entries(value).filter(([, each]) => each !== undefined);
  entries.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, each]) => `${key}:${canonicalText(each)}`).join()}}`;
}

/** FNV-1a, 32 bits (Fowler, Noll and Vo), begun from a basis. */
function hash(text: string, basis: number): string {
  let sum = basis;
  for (let i = 0; i < text.length; i += 1) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193);
  return (sum >>> 0).toString(36);
}

function print(value: unknown): string {
  const text = canonicalText(value);
  return hash(text, 0x811c9dc5) + hash(text, 0x9e3779b9);
}

/** A short text that is the same for the same arena with the same things in it, wherever its course is kept. */
export function drawingPrint(course: Course): string {
  const { obstacles, constraints } = currentLayout(course);
  const { length, width } = course.arena;
  return print([length, width, obstacles.map(({ id, pose, pieces }) => ({ id, pose, pieces })), constraints.length]);
}

/** A short text that is the same while the steps of a part are: what was ticked is about these steps. */
export function partPrint({ steps }: Pick<SetOutPart, 'steps'>): string {
  return print(
    steps.map(({ piece, observations, checks }) => [
      piece,
      [...observations, ...checks].map(({ kind, grips, reading }) => [kind, grips, reading]),
    ]),
  );
}
