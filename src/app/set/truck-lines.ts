import type { Course, Stock } from '../../core/course/course.ts';
import { freeId } from '../../core/course/ids.ts';
import { readCount } from '../../core/measure/count.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import type { Values } from '../../core/pieces/params.ts';
import type { PieceKind } from '../../core/pieces/piece.ts';
import { pieceKind } from '../../core/pieces/pieces.ts';
import { printValue, readValue } from '../../desk/commands/typed.ts';
import type { Refusal } from '../../desk/input.ts';
import { setWords } from '../../words/set.ts';

/** As the file format has it. */
const MOST = 10_000;

/** A count as typed, or the sentence that says why not. */
export function readStockCount(text: string): number | string {
  const read = readCount(text);
  const isCount = read.kind === 'read' && read.value >= 0 && read.value <= MOST;
  return isCount ? read.value : setWords.countRefused(MOST);
}

/** What a person types for a new line of the truck. A size left empty tells nothing: the line then serves every size. */
export interface TypedLine {
  readonly kind: string;
  readonly title: string;
  readonly count: string;
  readonly sizes: Readonly<Record<string, string>>;
}

/** The fields of a line that were not understood, each with its reason. */
export type LineErrors = Readonly<Record<string, Refusal>>;

/** The line that was typed, without an id; or what is wrong with it, by field. */
export function readLine(
  typed: TypedLine,
  unit: LengthUnit,
): { readonly line: Omit<Stock, 'id'> } | { readonly refusals: LineErrors } {
  const kind = pieceKind(typed.kind);
  if (kind === undefined) throw new Error(`readLine: there is no piece kind ${typed.kind}`);
  const refusals: Record<string, string> = {};
  const values: Record<string, number | string> = {};
  for (const [key, param] of Object.entries(kind.params)) {
    const text = typed.sizes[key]?.trim() ?? '';
    if (text === '') continue;
    const read = readValue(text, param, unit);
    if (read.kind === 'refused') refusals[key] = read.why;
    else values[key] = read.value;
  }
  const count = readStockCount(typed.count);
  if (typeof count === 'string') refusals.count = count;
  if (Object.keys(refusals).length > 0 || typeof count === 'string') return { refusals };
  const title = typed.title.trim() || lineTitle(kind, values, unit);
  return { line: { title, kind: kind.id, values, count } };
}

/** `Pole, length 12'`: what a line is called while nobody has given it a name. */
function lineTitle(kind: PieceKind, values: Values, unit: LengthUnit): string {
  return [kind.title, sizesWords(kind, values, unit)].filter((part) => part !== '').join(', ');
}

/** The sizes that tell a line from others, in words; empty when it serves every size. */
export function sizesWords(kind: PieceKind, values: Values, unit: LengthUnit): string {
  return Object.entries(values)
    .flatMap(([key, value]) => {
      const param = kind.params[key];
      return param === undefined ? [] : [`${param.label.toLowerCase()} ${printValue(value, param, unit)}`];
    })
    .join(', ');
}

/** The course with one more line on its truck, the last. */
export function withLine(course: Course, line: Omit<Stock, 'id'>): Course {
  const id = freeId(
    line.kind,
    course.truck.map((stock) => stock.id),
  );
  return { ...course, truck: [...course.truck, { id, ...line }] };
}

export function withoutLine(course: Course, id: string): Course {
  return { ...course, truck: course.truck.filter((stock) => stock.id !== id) };
}

export function withCount(course: Course, id: string, count: number): Course {
  return { ...course, truck: course.truck.map((stock) => (stock.id === id ? { ...stock, count } : stock)) };
}
