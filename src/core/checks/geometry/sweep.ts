import type { PlacedObstacle } from '../../course/placed.ts';
import type { Horse } from '../../horses/horse.ts';
import type { Metres } from '../../measure/quantity.ts';
import { memoizeByIdentity } from '../../memo/by-identity.ts';
import type { Passage } from '../../obstacles/passage.ts';
import { unionRings } from '../../plane/clip.ts';
import { hull } from '../../plane/hull.ts';
import { poseOn } from '../../plane/path.ts';
import { distance } from '../../plane/point.ts';
import { compose, normalizeAngle, type Pose, toLocal } from '../../plane/pose.ts';
import { type Ring, rectangle, transformRing } from '../../plane/ring.ts';
import type { LineElement } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import { type BlockedRegion, maxClearancePlacement, type Placement, type Rectangle } from './max-clearance.ts';
import { turnMotion } from './turn-motion.ts';
import { facingPose, isInLane, nearbyRegions, posesOfTurn } from './turn-poses.ts';

/** Distance between two placements along a lane, metres. */
const STEP: Metres = 0.2;

/** What the horse passes over while it backs or turns in an obstacle, as a rigid body that takes the widest way. */
export interface Sweep {
  readonly leg: number;
  readonly obstacle: string;
  /** The narrowest place: on a straight stretch backwards, or in a turn. */
  readonly move: 'back' | 'turn';
  /**
   * The least clearance, negative where the horse does not pass: to the hooves from what lies on the ground, to the
   * body from what stands up.
   */
  readonly clear: Metres;
  /** The pose of the middle of the horse there. */
  readonly at: Pose;
  /** The piece that is nearest there. */
  readonly key: string;
  /** From the outer edges of the hooves. */
  readonly base: Rectangle;
  /** Where the middle of the horse goes, pose after pose: the proof of `clear`. */
  readonly motion: readonly Pose[];
  /** The ground that the hooves' rectangle passes over, for drawing; worked out when it is first read. */
  readonly area: readonly Ring[];
  /** The same for the body, which only meets what stands up. */
  readonly body: readonly Ring[];
}

/** The rectangle around the four hooves. */
export function hoofRectangle({ wheelbase, stance, hoof }: Horse): Rectangle {
  return { length: wheelbase.value + hoof.value, width: stance.value + hoof.value };
}

interface LocalSweep {
  readonly placements: readonly Placement[];
  readonly keys: readonly string[];
  readonly narrowest: Placement;
  readonly move: 'back' | 'turn';
}

/**
 * What the horse must not touch, in the obstacle's frame: the hooves what lies on the ground, the body what stands up.
 */
function blockedRegions({ pieces }: PlacedObstacle, horse: Horse): readonly BlockedRegion[] {
  const body = { length: horse.bodyLength.value, width: horse.bodyWidth.value };
  const base = hoofRectangle(horse);
  return pieces.flatMap(({ piece, figure }) => {
    if (figure.stands === 'deck') return [];
    const ring = transformRing(figure.footprint, piece.pose);
    return [{ ring, base: figure.stands === 'standing' ? body : base }];
  });
}

/**
 * Poses along a stretch backwards, without those that the turn at its end places better, or round the feet about which the
 * horse turns.
 */
function posesAlongBack(frame: Pose, element: LineElement, ends: readonly [number, number]): readonly Pose[] {
  const poses: Pose[] = [];
  let done = 0;
  for (const stretch of element.path) {
    const steps = Math.max(1, Math.ceil(stretch.length / STEP));
    for (let i = 0; i <= steps; i += 1) {
      const along = (stretch.length * i) / steps;
      if (done + along < ends[0] || done + along > element.length - ends[1]) continue;
      const pose = poseOn(stretch, along);
      poses.push(toLocal(frame, { ...pose, angle: pose.angle + element.facing }));
    }
    done += stretch.length;
  }
  return poses;
}

function elementPlacements(
  blocks: readonly BlockedRegion[],
  frame: Pose,
  elements: readonly LineElement[],
  index: number,
): readonly Placement[] {
  const element = elements[index];
  if (element === undefined) return [];
  const from = facingPose(frame, element, 'start');
  const to = facingPose(frame, element, 'end');
  if (from === undefined || to === undefined) return [];
  const half = hoofLength(blocks) / 2;
  const turns = (neighbour: LineElement | undefined): number =>
    neighbour !== undefined && neighbour.turn !== 0 ? half : 0;
  const poses = posesAlongBack(frame, element, [turns(elements[index - 1]), turns(elements[index + 1])]);
  const turn = element.turn === 0 ? [] : posesOfTurn(frame, elements, index, { blocks, from, half });
  // Over a pole, as in a side pass, the feet stand on both sides of it: no rectangle says whether they clear it.
  const isOver = [elements[index - 1], elements[index + 1]].some((each) => each?.move === 'side-pass');
  if (isOver || (turn.length === 2 && !isInLane(blocks, from))) return [];
  const nearby = nearbyRegions(blocks, element.turn === 0 ? [...poses, from] : turn);
  const own = nearby.flatMap((i) => blocks[i] ?? []);
  if (own.length === 0) return [];
  const placements =
    element.turn === 0 ? poses.map((pose) => maxClearancePlacement(own, pose, 'across')) : turnMotion(own, turn);
  return placements.map((stand) => ({ ...stand, block: nearby[stand.block] ?? -1 }));
}

/** One turn of a way through an obstacle, in the obstacle's frame: what limits it, what it passes, and how it goes. */
export interface SweptTurn {
  readonly blocks: readonly BlockedRegion[];
  readonly poses: readonly Pose[];
  readonly placements: readonly Placement[];
}

/** The turns on a leg between two lanes of its obstacle, as the sweep takes them. */
export function sweptTurns(survey: Survey, leg: number): readonly SweptTurn[] {
  const obstacle = survey.obstacles.find((each) => each.obstacle.id === survey.layout.ride.legs[leg]?.obstacle);
  if (obstacle === undefined) return [];
  const blocks = blockedRegions(obstacle, survey.horse);
  const elements = survey.line.elements.filter((each) => each.leg === leg && each.part === 'obstacle');
  const frame = obstacle.obstacle.pose;
  return elements.flatMap((element, i) => {
    const from = element.turn === 0 ? undefined : facingPose(frame, element, 'start');
    if (from === undefined) return [];
    const poses = posesOfTurn(frame, elements, i, { blocks, from, half: hoofLength(blocks) / 2 });
    return poses.length < 4 ? [] : [{ blocks, poses, placements: elementPlacements(blocks, frame, elements, i) }];
  });
}

function hoofLength(blocks: readonly BlockedRegion[]): number {
  return Math.min(...blocks.map(({ base }) => base.length));
}

function localSweep(obstacle: PlacedObstacle, horse: Horse, elements: readonly LineElement[]): LocalSweep | undefined {
  const blocks = blockedRegions(obstacle, horse);
  if (blocks.length === 0) return undefined;
  const keys = obstacle.pieces.filter(({ figure }) => figure.stands !== 'deck').map(({ piece }) => piece.id);
  const placements: Placement[] = [];
  let narrowest: Placement | undefined;
  let move: LocalSweep['move'] = 'back';
  for (const [i, element] of elements.entries()) {
    if (element.move !== 'back' && element.move !== 'turn') continue;
    for (const stand of elementPlacements(blocks, obstacle.obstacle.pose, elements, i)) {
      placements.push(stand);
      if (narrowest !== undefined && stand.clear >= narrowest.clear) continue;
      narrowest = stand;
      move = element.move;
    }
  }
  return narrowest === undefined ? undefined : { placements, keys, narrowest, move };
}

interface CachedSweep {
  readonly horse: Horse;
  readonly sweep: LocalSweep | undefined;
}

/** By an obstacle's pieces and passages: they stay the same objects while the obstacle is moved as a whole. */
const localCache = new WeakMap<object, WeakMap<Passage, CachedSweep>>();

function cachedLocalSweep(
  obstacle: PlacedObstacle,
  passage: Passage,
  survey: Survey,
  leg: number,
): LocalSweep | undefined {
  const byPassage = localCache.get(obstacle.obstacle.pieces) ?? new WeakMap<Passage, CachedSweep>();
  localCache.set(obstacle.obstacle.pieces, byPassage);
  const cached = byPassage.get(passage);
  if (cached?.horse === survey.horse) return cached.sweep;
  const elements = survey.line.elements.filter((each) => each.leg === leg && each.part === 'obstacle');
  const local = localSweep(obstacle, survey.horse, elements);
  byPassage.set(passage, { horse: survey.horse, sweep: local });
  return local;
}

/** Whether the horse backs or turns on the spot on this way. */
function isSwept({ stations }: Passage): boolean {
  return stations.some((each) => each.kind === 'turn' || (each.kind === 'reach' && each.move === 'back'));
}

/** Placements no further apart than this follow each other without a jump, metres. */
const LEAP = { far: 0.5, turned: 0.5 } as const;
/** The ground that a rectangle of this size passes over, without holes between consecutive placements. */
function sweptRings({ length, width }: Rectangle, frame: Pose, placements: readonly Placement[]): readonly Ring[] {
  const outline = rectangle(length, width);
  return unionRings(
    placements.map(({ pose: to }, i) => {
      const from = placements[i - 1]?.pose ?? to;
      const follows = distance(from, to) <= LEAP.far && Math.abs(normalizeAngle(to.angle - from.angle)) <= LEAP.turned;
      const there = transformRing(outline, compose(frame, to));
      return follows ? hull([...there, ...transformRing(outline, compose(frame, from))]) : there;
    }),
  );
}

function sweepOf(survey: Survey, obstacle: PlacedObstacle, leg: number): Sweep | undefined {
  const ridden = survey.layout.ride.legs[leg];
  const passage = obstacle.obstacle.passages.find(({ id }) => id === ridden?.passage);
  if (passage === undefined || !isSwept(passage)) return undefined;
  const local = cachedLocalSweep(obstacle, passage, survey, leg);
  if (local === undefined) return undefined;
  const { id, pose } = obstacle.obstacle;
  const base = hoofRectangle(survey.horse);
  const body = { length: survey.horse.bodyLength.value, width: survey.horse.bodyWidth.value };
  const cache = new Map<Rectangle, readonly Ring[]>();
  const swept = (outline: Rectangle): readonly Ring[] => {
    const rings = cache.get(outline) ?? sweptRings(outline, pose, local.placements);
    cache.set(outline, rings);
    return rings;
  };
  return {
    leg,
    obstacle: id,
    move: local.move,
    clear: local.narrowest.clear,
    at: compose(pose, local.narrowest.pose),
    key: `${id}/${local.keys[local.narrowest.block] ?? ''}`,
    base,
    get motion() {
      return local.placements.map((placement) => compose(pose, placement.pose));
    },
    get area() {
      return swept(base);
    },
    get body() {
      return swept(body);
    },
  };
}

/** For every leg on which the horse backs or turns inside an obstacle: the narrowest place and the swept ground. */
export const sweepsOf = memoizeByIdentity((survey: Survey): readonly Sweep[] => {
  const byId = new Map(survey.obstacles.map((each) => [each.obstacle.id, each]));
  const sweeps = survey.layout.ride.legs.flatMap((leg, i) => {
    const obstacle = byId.get(leg.obstacle);
    const sweep = obstacle === undefined ? undefined : sweepOf(survey, obstacle, i);
    return sweep === undefined ? [] : [sweep];
  });
  return sweeps;
});
