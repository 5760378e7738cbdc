import { TOUCHING } from '../checks/placing/overlap.ts';
import type { Metres } from '../measure/quantity.ts';
import { overlapArea } from '../plane/clip.ts';
import { distance } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import { boundsIntersect, type Ring, ringBounds } from '../plane/ring.ts';
import { ringDistance } from '../plane/segment.ts';
import type { Errand } from './carrying.ts';
import type { Crew, Load, Stop } from './change-over.ts';
import { cutCycles } from './cut-cycles.ts';
import { footprintOf, loadAt, metresBetween, walkedToTruck } from './loads.ts';

/** An errand, or a half of one, in the pass in which it is done. */
export interface Task extends Errand {
  readonly pass: number;
}

/** A thing is laid aside at least so far from everything else: room to step and to take hold. Estimate. */
const ASIDE_ROOM: Metres = 0.3;
/** Free places are sought so far to each side of the way, and so far apart. */
const ASIDE_FAR: Metres = 12;
const ASIDE_STEP: Metres = 0.5;
const ALONG = [0.5, 0.35, 0.65, 0.2, 0.8, 0, 1] as const;

function lying({ from }: Errand): Ring {
  return from.kind === 'ground' ? footprintOf(from.load) : [];
}

function target({ to }: Errand): Ring {
  return to.kind === 'ground' ? footprintOf(to.load) : [];
}

/** For each errand, those whose thing still lies where its own will lie. */
export function blockers(errands: readonly Errand[]): readonly (readonly number[])[] {
  const now = errands.map((each) => ({ ring: lying(each), bounds: ringBounds(lying(each)) }));
  return errands.map((errand, own) => {
    const ring = target(errand);
    const bounds = ringBounds(ring);
    return now.flatMap((other, i) => {
      if (i === own || ring.length === 0 || !boundsIntersect(bounds, other.bounds)) return [];
      return overlapArea(ring, other.ring) > TOUCHING ? [i] : [];
    });
  });
}

/** Passes 1 first: after all that it waits for. `aside` are out of the way after the first pass, whatever blocks them. */
function depths(waits: readonly (readonly number[])[], aside: ReadonlySet<number>): readonly number[] {
  const known = new Map<number, number>();
  const depth = (task: number): number => {
    const found = known.get(task);
    if (found !== undefined) return found;
    const before = (waits[task] ?? []).map((each) => (aside.has(each) ? 1 : depth(each)));
    const made = Math.max(aside.has(task) ? 1 : 0, ...before) + 1;
    known.set(task, made);
    return made;
  };
  return waits.map((_, task) => depth(task));
}

/** Where a thing can be laid down between two places: clear of all that lies there before, after and aside. */
function asidePose(load: Load, errand: Errand, taken: readonly Ring[]): Pose | undefined {
  const [from, to] = [errand.from, errand.to].map((stop) => (stop.kind === 'ground' ? stop.load.pose : undefined));
  if (from === undefined || to === undefined) return undefined;
  const apart = distance(from, to);
  const [dx, dy] = apart === 0 ? [1, 0] : [(to.x - from.x) / apart, (to.y - from.y) / apart];
  const within = ringBounds(taken.flat());
  const steps = Math.round(ASIDE_FAR / ASIDE_STEP);
  const poses = ALONG.flatMap((along) =>
    Array.from({ length: 2 * steps + 1 }, (_, i): Pose => {
      const side = (i - steps) * ASIDE_STEP;
      const x = from.x + along * (to.x - from.x) - side * dy;
      return { x, y: from.y + along * (to.y - from.y) + side * dx, angle: from.angle };
    }),
  );
  const detour = (pose: Pose): Metres => distance(from, pose) + distance(pose, to);
  const roomy = (pose: Pose): boolean => {
    const ring = footprintOf(loadAt(load, pose));
    const bounds = ringBounds(ring);
    const inside = within.minX <= bounds.minX && bounds.maxX <= within.maxX;
    if (!inside || bounds.minY < within.minY || bounds.maxY > within.maxY) return false;
    return taken.every((other) => {
      return !boundsIntersect(bounds, ringBounds(other), ASIDE_ROOM) || ringDistance(ring, other) >= ASIDE_ROOM;
    });
  };
  return poses.sort((a, b) => detour(a) - detour(b)).find(roomy);
}

function sum(metres: readonly Metres[]): Metres {
  return metres.reduce((all, each) => all + each, 0);
}

/** An errand in two halves: out of the way in the first pass, and on to its place in a later one. */
function halves(errand: Errand, pass: number, pose: Pose | undefined, truckAt: Crew['truckAt']): readonly Task[] {
  const { load, from, to } = errand;
  if (from.kind !== 'ground' || to.kind !== 'ground') throw new Error('only what lies on the ground is laid aside');
  const stop: Stop = pose === undefined ? { kind: 'truck', at: truckAt } : { kind: 'aside', at: pose };
  const walked = (end: Load) =>
    pose === undefined ? sum(walkedToTruck(end, truckAt)) : metresBetween(end, loadAt(end, pose));
  return [
    { load, from, to: stop, metres: walked(from.load), pass: 1 },
    { load, from: stop, to, metres: walked(to.load), pass },
  ];
}

/** The key of the pole that a riser holds up. */
function poleKey({ key }: Load): string {
  return key.slice(0, key.lastIndexOf(':'));
}

/** The passes of all but risers; a riser comes with its pole. */
function withRisers(tasks: readonly Task[], risers: readonly Errand[]): readonly Task[] {
  const laid = new Map(tasks.flatMap(({ to, pass }) => (to.kind === 'ground' ? [[to.load.key, pass] as const] : [])));
  return risers.map((each) => {
    return { ...each, pass: each.to.kind === 'ground' ? (laid.get(poleKey(each.to.load)) ?? 1) : 1 };
  });
}

/**
 * The errands by passes, such that nothing is laid over a thing that is still to be moved. Where things wait for each
 * other in a circle, as few as possible are laid aside first. `occupied` is all that lies there before or after.
 */
export function inPasses(errands: readonly Errand[], occupied: readonly Load[], crew: Crew): readonly Task[] {
  const pieces = errands.filter(({ load }) => load.thing === 'piece');
  const waits = blockers(pieces);
  const aside = new Set(cutCycles(waits));
  const passes = depths(waits, aside);
  const taken = occupied.map(footprintOf).filter((ring) => ring.length > 0);
  const tasks = pieces.flatMap((errand, i): readonly Task[] => {
    const pass = passes[i] ?? 1;
    if (!aside.has(i)) return [{ ...errand, pass }];
    const pose = asidePose(errand.load, errand, taken);
    if (pose !== undefined) taken.push(footprintOf(loadAt(errand.load, pose)));
    return halves(errand, pass, pose, crew.truckAt);
  });
  return [
    ...tasks,
    ...withRisers(
      tasks,
      errands.filter(({ load }) => load.thing === 'riser'),
    ),
  ];
}
