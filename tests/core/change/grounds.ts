/** Random things on the ground, and what it costs to bring them where others are, worked out without the module. */

import { seededRandom } from '../../../src/core/change/seeded-random.ts';
import { type PlacedObstacle, placedObstacle } from '../../../src/core/course/placed.ts';
import { feet, inches } from '../../../src/core/measure/quantity.ts';
import { completeValues, type Values } from '../../../src/core/pieces/params.ts';
import type { Piece } from '../../../src/core/pieces/piece.ts';
import { pieceKind } from '../../../src/core/pieces/pieces.ts';
import type { Point } from '../../../src/core/plane/point.ts';
import type { Pose } from '../../../src/core/plane/pose.ts';

/** What a crew tells apart: two poles of 12 ft with and without paint, one that one person carries, and others. */
interface Sort {
  readonly kind: string;
  readonly values: Values;
  readonly length: number;
  /** Two hold it. */
  readonly two: boolean;
  readonly alike: 'any' | 'half' | 'none';
}

export const SORTS = {
  banded: { kind: 'pole', values: {}, length: feet(12), two: true, alike: 'half' },
  plain: { kind: 'pole', values: { bands: 'plain' }, length: feet(12), two: true, alike: 'half' },
  short: { kind: 'pole', values: { length: feet(8) }, length: feet(8), two: false, alike: 'half' },
  marker: { kind: 'marker', values: {}, length: feet(1), two: false, alike: 'any' },
  gate: { kind: 'gate', values: {}, length: feet(6) + 2 * inches(4), two: true, alike: 'none' },
  bridge: { kind: 'bridge', values: {}, length: feet(8), two: true, alike: 'half' },
  mailbox: { kind: 'mailbox', values: {}, length: inches(20), two: false, alike: 'none' },
} as const satisfies Record<string, Sort>;

export interface Thing {
  readonly sort: keyof typeof SORTS;
  readonly pose: Pose;
  /** Heights of a pole's ends. */
  readonly raised?: readonly [number, number];
}

/** One obstacle a thing, so that each can be told from the others. */
export function ground(things: readonly Thing[]): readonly PlacedObstacle[] {
  return things.map(({ sort, pose, raised = [0, 0] }, i) => {
    const { kind, values } = SORTS[sort];
    const params = pieceKind(kind)?.params ?? {};
    const rigging = kind === 'pole' ? { raisedStart: raised[0], raisedEnd: raised[1] } : {};
    const all = { ...completeValues(params, values), ...rigging };
    const piece: Piece = { id: `${kind}-1`, kind, values: all, pose: { x: 0, y: 0, angle: 0 } };
    return placedObstacle({
      ...{ id: `free-${i + 1}`, kind: 'free', values: {}, pose, side: 1 },
      ...{ pieces: [piece], constraints: [], passages: [] },
    });
  });
}

/** Things of several sorts in 60 by 30 m; some poles are raised. */
export function randomThings(seed: number, count: number): readonly Thing[] {
  const roll = seededRandom(seed);
  const sorts = Object.keys(SORTS) as Thing['sort'][];
  return Array.from({ length: count }, () => {
    const common = roll() < 0.7 ? sorts.slice(0, 4) : sorts;
    const sort = common[Math.floor(roll() * common.length)] as Thing['sort'];
    const pose = { x: 60 * roll(), y: 30 * roll(), angle: 7 * roll() };
    const isRaised = SORTS[sort].kind === 'pole' && roll() < 0.2;
    return { sort, pose, ...(isRaised && { raised: [0, inches(6)] as const }) };
  });
}

/** The next layout: some things lie where others lay, a little off or turned half around, some are new, some are gone. */
export function nextThings(things: readonly Thing[], seed: number): readonly Thing[] {
  const roll = seededRandom(seed + 1000);
  const kept = things.filter(() => roll() < 0.8);
  return [
    ...kept.map((thing) => {
      const { x, y, angle } = thing.pose;
      const dice = roll();
      if (dice < 0.3) return { ...thing, pose: { x: x + 0.03 * (roll() - 0.5), y, angle: angle + Math.PI } };
      if (dice < 0.5) return { ...thing, pose: { x: x + 0.2 * roll(), y, angle } };
      return { ...thing, pose: { x: 60 * roll(), y: 30 * roll(), angle: 7 * roll() } };
    }),
    ...randomThings(seed + 2000, Math.floor(roll() * 4)),
  ];
}

/** A thing or a riser as the arithmetic below sees it. */
interface Spot {
  readonly type: string;
  readonly held: readonly Point[];
  readonly ends: readonly Point[];
  readonly turns: boolean;
}

function along({ x, y, angle }: Pose, far: number): Point {
  return { x: x + far * Math.cos(angle), y: y + far * Math.sin(angle) };
}

function spotsOf(things: readonly Thing[], people: number): readonly Spot[] {
  return things.flatMap(({ sort, pose, raised }): readonly Spot[] => {
    const { length, two, alike } = SORTS[sort];
    const both = [along(pose, -length / 2), along(pose, length / 2)];
    const middle = [along(pose, 0)];
    const held = two && people > 1 ? both : middle;
    const risers = (raised ?? []).flatMap((height, end): Spot[] => {
      const at = [both[end] as Point];
      return height === 0 ? [] : [{ type: `riser ${height}`, held: at, ends: at, turns: false }];
    });
    return [{ type: sort, held, ends: alike === 'any' ? middle : both, turns: alike === 'half' }, ...risers];
  });
}

function apart(a: Point | undefined, b: Point | undefined): number {
  return Math.hypot((a?.x ?? 0) - (b?.x ?? 0), (a?.y ?? 0) - (b?.y ?? 0));
}

/** The charge for picking up and the tolerance, as assets/crew/usual.json has them. */
const CHARGE = 6;
const RIGHT = 0.0254;

function between(a: Spot, b: Spot): number {
  const turned = (points: readonly Point[]) => (b.turns ? [points, [...points].reverse()] : [points]);
  const off = turned(b.ends).map((ends) => Math.max(...a.ends.map((end, i) => apart(end, ends[i]))));
  if (Math.min(...off) <= RIGHT + 1e-9) return 0;
  const walked = turned(b.held).map((held) => a.held.reduce((sum, point, i) => sum + apart(point, held[i]), 0));
  return CHARGE + Math.min(...walked);
}

/**
 * A matrix a type: each thing to each place, to the truck, and each place from the truck. Any number may go by the truck.
 */
export function fullCosts(
  from: readonly Thing[],
  to: readonly Thing[],
  { truckAt, people }: { readonly truckAt: Point; readonly people: number },
): readonly number[][][] {
  const [lying, wanted] = [spotsOf(from, people), spotsOf(to, people)];
  const types = [...new Set([...lying, ...wanted].map(({ type }) => type))];
  const byTruck = ({ held }: Spot) => CHARGE + held.reduce((sum, point) => sum + apart(point, truckAt), 0);
  return types.map((type) => {
    const rows = lying.filter((each) => each.type === type);
    const columns = wanted.filter((each) => each.type === type);
    return [
      ...rows.map((a) => [...columns.map((b) => between(a, b)), ...rows.map(() => byTruck(a))]),
      ...columns.map(() => [...columns.map(byTruck), ...rows.map(() => 0)]),
    ];
  });
}

/** The least total over all ways to give each row a column of its own; only for a few rows. */
export function bruteTotal(costs: readonly (readonly number[])[]): number {
  const columns = costs[0]?.length ?? 0;
  const go = (row: number, taken: number): number => {
    const line = costs[row];
    if (line === undefined) return 0;
    let least = Number.POSITIVE_INFINITY;
    for (let column = 0; column < columns; column += 1) {
      if ((taken >> column) & 1) continue;
      least = Math.min(least, (line[column] as number) + go(row + 1, taken | (1 << column)));
    }
    return least;
  };
  return go(0, 0);
}
