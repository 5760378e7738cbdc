/**
 * Readings of a tape as text: a list of JSON objects under "readings", or a table with a line of column names. Each has
 * `kind`, `from`, `to`, `reads`, and `sure` where its standard error is known.
 */
import * as z from 'zod/mini';
import type { Grip, ObservationKind } from '../constraints/constraint.ts';
import { readAngle } from '../measure/angle.ts';
import { readLength } from '../measure/length.ts';
import type { Reading } from '../measure/quantity.ts';
import type { GroundReading } from '../setout/built/adjust.ts';
import {
  isSuchThing,
  OBSERVED_THINGS,
  type ObservedThing,
  observableAsDrawn,
  readingError,
} from '../setout/built/as-built-observable.ts';
import { measuredGaps } from '../setout/plan/measured-gaps.ts';
import type { SetOutCrew } from '../setout/setout.ts';
import { isJsonObject, jsonValueWords } from './json-path.ts';
import { writtenReadings } from './reading-lines.ts';
import { type PlaceNames, type ReadingPlace, readPlace } from './reading-place.ts';
import { schemaErrors } from './schema-errors.ts';

const KINDS = Object.keys(OBSERVED_THINGS) as ObservationKind[];

const readingSchema = z.strictObject({
  kind: z.enum(KINDS),
  from: z.string(),
  to: z.string(),
  reads: z.union([z.string(), z.number()]),
  sure: z.optional(z.union([z.string(), z.number()])),
});

type Written = z.infer<typeof readingSchema>;

/** A reading that was understood, with its line and what was assumed. */
export interface FiledReading {
  readonly line: number;
  readonly reading: GroundReading;
  readonly note?: string;
}

/** What is wrong with one line, and what would be right. */
export interface ReadingFault {
  readonly line: number;
  readonly why: string;
}

export type GroundReadings =
  | { readonly kind: 'read'; readonly readings: readonly FiledReading[] }
  | { readonly kind: 'refused'; readonly faults: readonly [ReadingFault, ...ReadingFault[]] };

/** What readings are read by: the layout that was set out, with the letters of its set-out, and who taped. */
export interface ReadingContext extends PlaceNames {
  readonly crew: SetOutCrew;
}

const THINGS: Readonly<Record<ObservedThing, string>> = {
  long: 'a pole or another long thing',
  small: 'a marker or another small thing',
  piece: 'a piece',
  wall: 'a wall',
  'wall from': 'a wall with the place where the tape begins, as wall south from west',
};

/** Kinds that may read less than nothing: what is off to the other side. */
const SIGNED: ReadonlySet<ObservationKind> = new Set(['level', 'in-line', 'ahead', 'square']);

type Refusal = { readonly kind: 'refused'; readonly why: string };

/** Where two poles are crossed one after the other on the line of travel: where a gap is taped if nothing else is said. */
function onTheLine({ survey }: ReadingContext, keys: readonly string[]): readonly number[] | undefined {
  const gap = measuredGaps(survey).find((each) => each.isRidden && each.keys.every((key) => keys.includes(key)));
  if (gap === undefined) return undefined;
  return gap.keys[0] === keys[0] ? gap.at : [gap.at[1], gap.at[0]];
}

/** The grips as they are meant: a gap between whole poles is taped on the line of travel where that crosses both. */
function meantGrips(
  kind: ObservationKind,
  [first, second]: readonly [ReadingPlace, ReadingPlace],
  context: ReadingContext,
): readonly [Grip, Grip] {
  const { grip: a } = first;
  const { grip: b } = second;
  if (kind !== 'gap' || !first.isWhole || !second.isWhole || 'wall' in a || 'wall' in b) return [a, b];
  const at = onTheLine(context, [a.piece, b.piece]);
  if (at === undefined) return [a, b];
  return [
    { ...a, at: at[0] as number },
    { ...b, at: at[1] as number },
  ];
}

/** What is wrong with the two places for this kind; undefined when they are right. */
function placesFault(
  kind: ObservationKind,
  places: readonly [ReadingPlace, ReadingPlace],
  { survey }: ReadingContext,
): string | undefined {
  const wanted = OBSERVED_THINGS[kind];
  const [first, second] = places;
  for (const [i, { grip, from }] of places.entries()) {
    const thing = wanted[i] as ObservedThing;
    const name = 'wall' in grip ? `the ${grip.wall} wall` : grip.piece;
    const where = i === 0 ? '"from"' : '"to"';
    const isMissing = thing === 'wall from' && from === undefined;
    if (!isSuchThing(survey, grip, thing) || isMissing) {
      return `${where} of ${kind} is ${name}; ${THINGS[thing]} belongs there.`;
    }
    if (thing === 'wall' && from !== undefined)
      return `${where} of ${kind} is square to the wall: write ${name} alone.`;
  }
  if ('piece' in first.grip && 'piece' in second.grip && first.grip.piece === second.grip.piece) {
    return `The tape goes from ${first.grip.piece} to itself; two pieces belong there.`;
  }
  return undefined;
}

/** A length or an angle as written; a bare number in JSON is metres or radians. */
function readValue(kind: ObservationKind, text: string | number, { survey }: ReadingContext): Reading<number> {
  if (typeof text === 'number') return { kind: 'read', value: text };
  return kind === 'square' ? readAngle(text) : readLength(text, survey.course.unit);
}

function readOne(fields: Written, context: ReadingContext): Omit<FiledReading, 'line'> | Refusal {
  const { kind } = fields;
  const [from, to] = [readPlace(fields.from, context), readPlace(fields.to, context)];
  if (from.kind === 'refused') return from;
  if (to.kind === 'refused') return to;
  const fault = placesFault(kind, [from, to], context);
  if (fault !== undefined) return { kind: 'refused', why: fault };
  const reads = readValue(kind, fields.reads, context);
  if (reads.kind === 'refused') return reads;
  if (reads.value < 0 && !SIGNED.has(kind)) {
    return { kind: 'refused', why: `"reads" is ${fields.reads}; ${kind} is 0 or more.` };
  }
  const of = observableAsDrawn(context.survey, kind, meantGrips(kind, [from, to], context), to.from);
  const sure = fields.sure === undefined ? undefined : readValue(kind, fields.sure, context);
  if (sure?.kind === 'refused') return { kind: 'refused', why: `How sure it is: ${sure.why}` };
  const sigma = sure?.value ?? readingError(context.survey, of, context.crew);
  if (!(sigma > 0)) return { kind: 'refused', why: `How sure it is: ${fields.sure} is not above 0.` };
  const reading = { ...of, read: reads.value, sigma };
  return reads.note === undefined ? { reading } : { reading, note: reads.note };
}

/** Reads the readings of a file against a layout: all of them, or every line that is wrong with its reason. Never throws. */
export function readGroundReadings(text: string, context: ReadingContext): GroundReadings {
  const written = writtenReadings(text);
  if (written.kind === 'refused') return { kind: 'refused', faults: [{ line: 1, why: written.why }] };
  const faults: ReadingFault[] = [];
  const readings: FiledReading[] = [];
  for (const { line, fields } of written.readings) {
    if (!isJsonObject(fields)) {
      faults.push({ line, why: `The reading is ${jsonValueWords(fields)}; kind, from, to and reads belong there.` });
      continue;
    }
    const checked = readingSchema.safeParse(fields);
    if (!checked.success) {
      faults.push({ line, why: schemaErrors(fields, checked.error.issues).join(' ') });
      continue;
    }
    const one = readOne(checked.data, context);
    if ('kind' in one) faults.push({ line, why: one.why });
    else readings.push({ line, ...one });
  }
  const [first, ...others] = faults;
  if (first !== undefined) return { kind: 'refused', faults: [first, ...others] };
  if (readings.length === 0) return { kind: 'refused', faults: [{ line: 1, why: 'There is no reading in it.' }] };
  return { kind: 'read', readings };
}
