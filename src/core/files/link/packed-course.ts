/** A course as a link carries it: the shown layout, its arena and its class; nothing of the truck, the day and the entries. */
import * as z from 'zod/mini';
import { type Course, currentLayout, FORMAT, type Layout, type Leg, VERSION } from '../../course/course.ts';
import { isJsonObject } from '../json-path.ts';
import { packedPose, roundedFields, roundedNumbers, unpackedPose } from './link-numbers.ts';
import { packedObstacle, packedObstacleSchema, unpackedObstacle } from './packed-obstacle.ts';

const GAITS = ['walk', 'jog', 'lope'] as const;
const pose = z.tuple([z.number(), z.number(), z.number()]);
const anything = z.unknown();
const fields = z.record(z.string(), anything);

/** Place of the obstacle in its list, of the passage in the obstacle's, gait and approach by place; then what is not usual. */
const packedLeg = z.union([
  z.tuple([z.int(), z.int(), z.int(), z.int()]),
  z.tuple([z.int(), z.int(), z.int(), z.int(), fields]),
]);
type PackedLeg = z.infer<typeof packedLeg>;

const proofSchema = z.tuple([z.int(), z.int()]);

/** What is not a file's own is checked here; the rest by the file's schema when it is whole again. */
const packedCourse = z.strictObject({
  title: anything,
  unit: anything,
  arena: anything,
  horse: anything,
  rulebook: anything,
  class: fields,
  notes: z.exactOptional(anything),
  name: anything,
  obstacles: z.array(packedObstacleSchema),
  constraints: z.exactOptional(z.array(anything)),
  start: pose,
  legs: z.array(packedLeg),
  end: z.exactOptional(pose),
  proof: proofSchema,
});
type PackedCourse = z.infer<typeof packedCourse>;

/** By obstacle, the passages of it that a link carries. */
type Carried = ReadonlyMap<string, readonly string[]>;

/** Where the pieces lie and how many parts the obstacles have, as two numbers: an obstacle that is built otherwise is told by them. */
export type Proof = z.infer<typeof proofSchema>;

/** The proof of a layout, without passages that a link does not carry. Its first number is in millimetres, in the frames of the obstacles. */
export function proofOf({ obstacles }: Layout, carried?: Carried): Proof {
  let sum = 0;
  let parts = 0;
  for (const { id, pieces, constraints, passages } of obstacles) {
    for (const [i, { pose: at }] of pieces.entries()) sum += (1 + (i % 7)) * (at.x + 2 * at.y + Math.cos(at.angle));
    const counted = passages.filter((each) => carried?.get(id)?.includes(each.id) ?? true);
    parts += pieces.length + constraints.length + counted.reduce((all, { stations }) => all + stations.length, 0);
  }
  return [Math.round(sum * 1000), parts];
}

/** Rounding moves the first number by no more than this for each part, millimetres. */
const PROOF_ROUNDING = 0.5;

/** Whether two proofs are of one layout, but for rounding. */
export function isSameProof([a, partsA]: Proof, [b, partsB]: Proof): boolean {
  return partsA === partsB && Math.abs(a - b) <= 1 + PROOF_ROUNDING * partsA;
}

function packedLegOf(leg: Leg, i: number, carried: Carried): PackedLeg {
  const { id, obstacle, passage, gait, approach, bends, ...rest } = leg;
  const at = [...carried.keys()].indexOf(obstacle);
  const by = carried.get(obstacle)?.indexOf(passage) ?? -1;
  const own = {
    ...(id === `leg-${i + 1}` ? {} : { id }),
    ...(bends.length > 0 ? { bends } : {}),
    ...rest,
  };
  const plain: [number, number, number, number] = [at, by, GAITS.indexOf(gait), GAITS.indexOf(approach)];
  return Object.keys(own).length > 0 ? [...plain, roundedFields(own)] : plain;
}

/** The shown layout of a course, packed. */
export function packed(course: Course): PackedCourse {
  const { title, unit, arena, horse, rulebook, notes } = course;
  const { list: _, ...about } = course.class;
  const layout = currentLayout(course);
  const { start, legs, end } = layout.ride;
  const carried = new Map<string, readonly string[]>();
  const obstacles = layout.obstacles.map((obstacle) => {
    const ridden = new Set(legs.flatMap((leg) => (leg.obstacle === obstacle.id ? [leg.passage] : [])));
    const one = packedObstacle(obstacle, { before: [...carried.keys()], ridden });
    carried.set(obstacle.id, one.passages);
    return one.packed;
  });
  return {
    title,
    unit,
    arena: roundedNumbers(arena),
    horse,
    rulebook: roundedNumbers(rulebook),
    class: roundedFields(about),
    ...(notes === '' ? {} : { notes }),
    name: layout.title,
    obstacles,
    ...(layout.constraints.length > 0 ? { constraints: layout.constraints.map(roundedFields) } : {}),
    start: packedPose(start),
    legs: legs.map((leg, i) => packedLegOf(leg, i, carried)),
    ...(end === undefined ? {} : { end: packedPose(end) }),
    proof: proofOf(layout, carried),
  };
}

/** The id of what may be anything. */
function idOf(item: unknown): unknown {
  return isJsonObject(item) ? item.id : undefined;
}

/** A course in the form of a file, not yet checked as one, and what its proof says. */
export interface Unpacked {
  readonly file: unknown;
  readonly proof: Proof;
}

/** The course of a link, its truck empty; undefined where the value has not the form of a packed course. */
export function unpacked(value: unknown): Unpacked | undefined {
  const read = packedCourse.safeParse(value);
  if (!read.success) return undefined;
  const { name, obstacles: list, constraints = [], start, legs, end, proof, notes = '', ...rest } = read.data;
  const ids: string[] = [];
  const obstacles = list.map((each) => {
    const obstacle = unpackedObstacle(each, ids);
    ids.push(obstacle.id);
    return obstacle;
  });
  const rideLegs = legs.map(([at, by, gait, approach, own = {}], i) => ({
    id: `leg-${i + 1}`,
    obstacle: obstacles[at]?.id,
    passage: idOf(obstacles[at]?.passages[by]),
    gait: GAITS[gait],
    approach: GAITS[approach],
    bends: [],
    ...own,
  }));
  const ride = { start: unpackedPose(start), legs: rideLegs, ...(end === undefined ? {} : { end: unpackedPose(end) }) };
  const layout = { id: 'layout-1', title: name, obstacles, constraints, ride };
  const file = { format: FORMAT, version: VERSION, ...rest, truck: [], layouts: [layout], current: layout.id, notes };
  return { file, proof };
}
