import * as z from 'zod/mini';
import type { Grip } from '../constraints/constraint.ts';
import type { PlacedPiece } from '../course/placed.ts';
import type { Survey } from '../survey.ts';
import { isSmall } from './observables.ts';
import { TAPE_STEP } from './plan/rounded-build.ts';
import type { Observation, PieceError, SetOut, SetOutStep, WeakFix } from './setout.ts';
import type { PartNames } from './words/place-words.ts';
import { partNames, stepSentences, stepWords } from './words/setout-words.ts';

/** Names the format in the file; the version grows when an old reader would misread a new file. */
const FORMAT = 'polewright-setout';
const VERSION = 1;

/** A sketch tells which of two answers is meant, and is too coarse to lay anything by: 5 cm and 5°. */
const SKETCH = { metres: 0.05, radians: Math.PI / 36 } as const;

const metres = z.number();
const pieceGrip = z.strictObject({
  /** Key of the piece. */
  piece: z.string(),
  /** Fraction along it from its end A, and the same in metres. */
  at: z.number(),
  along: metres,
});
const wallGrip = z.strictObject({
  wall: z.enum(['south', 'east', 'north', 'west']),
  /** Where on the wall the tape begins, from its start; walls run counter-clockwise with the arena on their left. */
  from: z.exactOptional(metres),
  /** 1: the tape runs towards the wall's end; -1: towards its start. */
  runs: z.exactOptional(z.literal([1, -1])),
});
const observation = {
  kind: z.string(),
  grips: z.tuple([pieceGrip, z.union([pieceGrip, wallGrip])]),
  side: z.literal([1, -1]),
  /** Metres, of `square` radians. */
  reading: z.number(),
  sigma: z.number(),
};
const error = z.strictObject({ along: metres, across: metres, turn: z.number(), end: metres });
const step = z.strictObject({
  number: z.int(),
  lay: z.string(),
  /** The step in plain sentences, lengths in the unit of the tapes. */
  says: z.array(z.string()),
  /** What rounding to the tape does to its readings, a sentence each; empty where it does nothing. */
  rounding: z.array(z.string()),
  held: z.array(z.string()),
  observations: z.array(z.strictObject(observation)),
  /** Its heading is set by eye: the heading on the drawing and the standard error of the eye, radians. */
  byEye: z.exactOptional(z.strictObject({ heading: z.number(), sigma: z.number() })),
  sketch: z.strictObject({ x: metres, y: metres, heading: z.number() }),
  checks: z.array(z.strictObject({ ...observation, tolerance: z.number() })),
  error,
  /** The angle at which its tapes meet, radians, when that is less than 60°; and what would be better. */
  weak: z.exactOptional(z.strictObject({ angle: z.number(), better: z.exactOptional(z.strictObject(observation)) })),
});

/** The plan of a set-out as a file: SI units, angles in radians counter-clockwise from +x, the frame of the course. */
export const setOutSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  course: z.string(),
  layout: z.string(),
  crew: z.strictObject({
    people: z.int(),
    tapes: z.int(),
    tape: metres,
    marked: z.enum(['ft', 'm']),
    rightAngle: z.enum(['board', 'three-four-five']),
  }),
  /** What readings are rounded to. */
  tapeStep: metres,
  arena: z.strictObject({ length: metres, width: metres }),
  pieces: z.array(
    z.strictObject({ key: z.string(), kind: z.string(), small: z.boolean(), length: metres, width: metres }),
  ),
  parts: z.array(
    z.strictObject({
      obstacles: z.array(z.string()),
      place: error,
      letters: z.record(z.string(), z.tuple([z.string(), z.string()])),
      steps: z.array(step),
    }),
  ),
  gaps: z.array(
    z.strictObject({
      pieces: z.tuple([z.string(), z.string()]),
      at: z.tuple([z.number(), z.number()]),
      plan: metres,
      rounded: metres,
      sigma: metres,
      ridden: z.boolean(),
    }),
  ),
  worstGap: metres,
  walked: metres,
});

export type SetOutDocument = z.infer<typeof setOutSchema>;

/** The schema for other programs: JSON Schema, draft 2020-12. */
export function setOutJsonSchema(): string {
  const { $schema, ...rest } = z.toJSONSchema(setOutSchema);
  const title = `Polewright set-out, version ${VERSION}`;
  const description =
    'How a crew sets a layout out by tape: what is laid, what is held, what the tape reads. Lengths in metres, angles in radians.';
  return `${JSON.stringify({ $schema, title, description, ...rest }, null, 2)}\n`;
}

function errorOf({ along, across, turn, end }: PieceError) {
  return { along, across, turn, end };
}

type PieceByKey = (key: string) => PlacedPiece;

function gripOf(grip: Grip, { from, runs }: Observation, piece: PieceByKey) {
  if ('wall' in grip) {
    return { wall: grip.wall, ...(from === undefined ? {} : { from }), ...(runs === undefined ? {} : { runs }) };
  }
  const at = grip.at ?? 0.5;
  return { piece: grip.piece, at, along: at * piece(grip.piece).figure.length };
}

function observationOf(of: Observation, piece: PieceByKey) {
  const { kind, grips, side, reading, sigma } = of;
  const [first, second] = grips.map((grip) => gripOf(grip, of, piece));
  return {
    kind,
    grips: [first, second],
    side,
    reading,
    sigma,
  } as SetOutDocument['parts'][number]['steps'][number]['observations'][number];
}

function sketched(value: number, step: number): number {
  return Math.round(value / step) * step + 0;
}

function weakOf({ angle, better }: WeakFix, piece: PieceByKey) {
  return { angle, ...(better === undefined ? {} : { better: observationOf(better, piece) }) };
}

function stepOf(
  step: SetOutStep,
  { piece, byEye, names }: { readonly piece: PieceByKey; readonly byEye: number; readonly names: PartNames },
) {
  const { number, piece: key, held, observations, turnedByEye, checks, error: errors, weak } = step;
  const { pose } = piece(key);
  return {
    number,
    lay: key,
    says: [...stepSentences(names, step)],
    rounding: [...stepWords(names, step).rounding],
    held: [...held],
    observations: observations.map((each) => observationOf(each, piece)),
    ...(turnedByEye === true ? { byEye: { heading: pose.angle, sigma: byEye } } : {}),
    sketch: {
      x: sketched(pose.x, SKETCH.metres),
      y: sketched(pose.y, SKETCH.metres),
      heading: sketched(pose.angle, SKETCH.radians),
    },
    checks: checks.map((each) => ({ ...observationOf(each, piece), tolerance: each.tolerance })),
    error: errorOf(errors),
    ...(weak === undefined ? {} : { weak: weakOf(weak, piece) }),
  };
}

/** The plan as a file. `byEye` is the standard error of a heading that is set by eye, radians. */
export function setOutDocument(of: Survey, plan: SetOut, byEye: number): SetOutDocument {
  const { course, layout, pieces } = of;
  const byKey = new Map(pieces.map((each) => [each.key, each]));
  const piece = (key: string): PlacedPiece => {
    const found = byKey.get(key);
    if (found === undefined) throw new Error(`set-out: there is no piece ${key}`);
    return found;
  };
  const { crew, parts, gaps, worstGap, walked } = plan;
  return {
    format: FORMAT,
    version: VERSION,
    course: course.title,
    layout: layout.title,
    crew: { ...crew },
    tapeStep: TAPE_STEP[crew.marked],
    arena: { length: course.arena.length, width: course.arena.width },
    pieces: pieces.map((each) => ({
      key: each.key,
      kind: each.piece.kind,
      small: isSmall(each),
      length: each.figure.length,
      width: each.figure.width,
    })),
    parts: parts.map((part) => ({
      obstacles: [...part.obstacles],
      place: errorOf(part.place),
      letters: Object.fromEntries([...part.letters].map(([key, [a, b]]) => [key, [a, b]])),
      steps: part.steps.map((each) => stepOf(each, { piece, byEye, names: partNames(of, plan, part) })),
    })),
    gaps: gaps.map(({ keys, at, plan: planned, rounded, sigma, isRidden }) => ({
      pieces: [...keys],
      at: [...at],
      plan: planned,
      rounded,
      sigma,
      ridden: isRidden,
    })),
    worstGap,
    walked,
  };
}
