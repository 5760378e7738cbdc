/**
 * The course as a schema: what a course file may hold, field by field. Objects are strict, so that a field this version
 * does not know is refused and not lost. What a schema cannot say (ids, references, kinds) is asked in files/read.ts.
 */
import * as z from 'zod/mini';
import { FORMAT, LONGEST_NAME, MOST_ENTRIES, VERSION } from './course.ts';

/** No arena, pole or bend is further out than this, metres. */
const FARTHEST = 10_000;
/** The largest rectangle that is still an arena, and the smallest, metres. Generous: a check on slips, not a rule. */
const ARENA_SIDE = { least: 3, most: 500 } as const;
/** Angles are written unwrapped only by hand; this many radians is plenty. */
const MOST_TURN = 1000;
const MOST_COUNT = 10_000;
const LONGEST_TEXT = 20_000;
const LONGEST_LIST = 2000;

const name = z.string().check(z.maxLength(LONGEST_NAME));
const text = z.string().check(z.maxLength(LONGEST_TEXT));
/** Ids stand in keys such as `fan-1/pole-2`. */
const id = z.string().check(z.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/), z.maxLength(100));
const key = z.string().check(z.regex(/^[a-z0-9]+(-[a-z0-9]+)*\/[a-z0-9]+(-[a-z0-9]+)*$/), z.maxLength(201));
const place = z.number().check(z.minimum(-FARTHEST), z.maximum(FARTHEST));
const angle = z.number().check(z.minimum(-MOST_TURN), z.maximum(MOST_TURN));
const count = z.int().check(z.minimum(0), z.maximum(MOST_COUNT));
const fraction = z.number().check(z.minimum(0), z.maximum(1));
const either = z.literal([1, -1]);
const gait = z.enum(['walk', 'jog', 'lope']);
/** Seconds: no more than a week. */
const duration = z.number().check(z.minimum(0), z.maximum(604_800));
const wall = z.enum(['south', 'east', 'north', 'west']);
const side = z.number().check(z.minimum(ARENA_SIDE.least), z.maximum(ARENA_SIDE.most));

function list<T extends z.core.SomeType>(item: T) {
  return z.array(item).check(z.maxLength(LONGEST_LIST));
}

const point = z.strictObject({ x: place, y: place });
const pose = z.strictObject({ x: place, y: place, angle });
/** Values of parameters: numbers in SI units, or the id of a choice. */
const values = z.record(z.string(), z.union([place, text]));

const piece = z.strictObject({ id, kind: id, values, pose, fixed: z.exactOptional(z.literal(true)) });

/** Points carry no world in a file: they all lie on the ground. */
function constraintOn<T extends z.core.SomeType>(piece: T) {
  const grip = z.union([z.strictObject({ piece, at: z.exactOptional(fraction) }), z.strictObject({ wall })]);
  return z.strictObject({
    id,
    kind: id,
    grips: list(grip),
    hold: z.exactOptional(place),
    side: z.exactOptional(either),
  });
}

const station = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('cross'), piece: id, fraction, way: either }),
  z.strictObject({
    kind: z.literal('reach'),
    piece: id,
    pose,
    move: z.enum(['ride', 'back', 'side-pass', 'work']),
  }),
  z.strictObject({ kind: z.literal('turn'), by: angle, about: z.exactOptional(z.enum(['forehand', 'haunches'])) }),
]);

const passage = z.strictObject({
  id,
  title: name,
  gaits: list(gait).check(z.minLength(1)),
  stations: list(station).check(z.minLength(1)),
});

const obstacle = z.strictObject({
  id,
  kind: id,
  name: z.exactOptional(name),
  values,
  pose,
  side: either,
  pieces: list(piece).check(z.minLength(1)),
  constraints: list(constraintOn(id)),
  passages: list(passage),
});

const leg = z.strictObject({
  id,
  obstacle: id,
  passage: id,
  openWay: z.exactOptional(z.literal(true)),
  gait,
  approach: gait,
  lead: z.exactOptional(z.enum(['left', 'right'])),
  bends: list(point),
  passes: z.exactOptional(
    list(z.strictObject({ obstacle: id, hand: z.enum(['left', 'right']) })).check(z.minLength(1)),
  ),
  words: z.exactOptional(text),
  wordsFor: z.exactOptional(text),
});

const layout = z.strictObject({
  id,
  title: name,
  obstacles: list(obstacle),
  constraints: list(constraintOn(key)),
  ride: z.strictObject({ start: pose, legs: list(leg), end: z.exactOptional(pose) }),
});

const alongWall = z.number().check(z.minimum(0), z.maximum(ARENA_SIDE.most));

const arena = z.strictObject({
  title: name,
  length: side,
  width: side,
  entrance: z.strictObject({ wall, at: alongWall, width: alongWall }),
  judge: z.exactOptional(point),
});

const stock = z.strictObject({ id, title: name, kind: id, values, count });

const houseLimit = z.strictObject({
  least: z.exactOptional(z.number()),
  most: z.exactOptional(z.number()),
  reason: text,
});

const level = z.enum(['open', 'amateur', 'youth', 'novice', 'walk-jog', 'led']);

const entry = z.strictObject({
  id,
  number: name,
  rider: name,
  horse: name,
  scratched: z.exactOptional(z.literal(true)),
  late: z.exactOptional(duration),
});
/** Seconds from midnight; a day that goes on after the next one still has a number. */
const timeOfDay = z.number().check(z.minimum(0), z.maximum(172_800));
/** A number that a draw begins from: 32 bits. */
const seed = z.int().check(z.minimum(0), z.maximum(4_294_967_295));

/** Who rides a class. */
const entryList = {
  list: z.exactOptional(z.array(entry).check(z.maxLength(MOST_ENTRIES))),
  drawn: z.exactOptional(z.strictObject({ seed, between: count })),
};

const classEntry = z.strictObject({
  show: name,
  title: name,
  level,
  date: z.string().check(z.regex(/^(\d{4}-\d{2}-\d{2})?$/)),
  entries: count,
  ...entryList,
  starts: z.exactOptional(timeOfDay),
  changeover: z.exactOptional(duration),
  dragEvery: z.exactOptional(count),
  drag: z.exactOptional(duration),
  allotted: z.exactOptional(duration),
  leadChange: z.exactOptional(z.enum(['simple', 'flying'])),
});

/** More classes than this are not ridden in one arena on one day. */
const MOST_CLASSES = 100;

const day = z.strictObject({
  starts: timeOfDay,
  classes: z
    .array(
      z.strictObject({
        id,
        layout: id,
        title: name,
        level,
        entries: count,
        ...entryList,
        judge: z.exactOptional(name),
        startsAt: z.exactOptional(timeOfDay),
        riders: z.exactOptional(list(name.check(z.minLength(1)))),
        changeover: z.exactOptional(duration),
        dragEvery: z.exactOptional(count),
        drag: z.exactOptional(duration),
      }),
    )
    .check(z.maxLength(MOST_CLASSES)),
  breaks: z
    .array(z.strictObject({ id, title: name, from: timeOfDay, length: duration }))
    .check(z.maxLength(MOST_CLASSES)),
  restBetween: z.exactOptional(duration),
});

/** Ids of findings name a check, obstacles and pieces; a reason is what makes it a waiver. */
const waiver = z.strictObject({ finding: text.check(z.minLength(1)), reason: text.check(z.minLength(1)) });

/** Tapes are between 3 m and 100 m long. */
const crew = z.strictObject({
  people: z.literal([1, 2, 3, 4]),
  truckAt: z.exactOptional(point),
  tapes: z.exactOptional(z.literal([1, 2, 3])),
  tape: z.exactOptional(z.number().check(z.minimum(3), z.maximum(100))),
  marked: z.exactOptional(z.enum(['ft', 'm'])),
  rightAngle: z.exactOptional(z.enum(['board', 'three-four-five'])),
});

export const courseSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  title: name,
  unit: z.enum(['ft', 'm']),
  arena,
  truck: list(stock),
  horse: id,
  rulebook: z.strictObject({ id, house: z.record(z.string(), houseLimit) }),
  class: classEntry,
  day: z.exactOptional(day),
  waived: z.exactOptional(list(waiver)),
  layouts: z.tuple([layout], layout).check(z.maxLength(LONGEST_LIST)),
  current: id,
  notes: text,
  crew: z.exactOptional(crew),
});

/** The schema's parts by name, for those who write it down. */
export const SCHEMA_PARTS = {
  id,
  point,
  pose,
  values,
  piece,
  station,
  passage,
  obstacle,
  leg,
  layout,
  arena,
  stock,
  day,
};
