/** The line over one obstacle while it is put together: each function adds what the horse does next. */
import { type Gait, type Horse, speed } from '../horses/horse.ts';
import { minTurnRadius } from '../horses/turns.ts';
import type { Metres, Radians, Seconds } from '../measure/quantity.ts';
import type { Move, Passage, Pivot } from '../obstacles/passage.ts';
import { type Path, pathEnd, pathFrom, pathLength } from '../plane/path.ts';
import { distance, TOUCH } from '../plane/point.ts';
import { normalizeAngle, type Pose } from '../plane/pose.ts';
import { biarc, connection } from './connection.ts';
import { gapBetween, type PoleOnPath } from './gaps.ts';
import type { GroundStation } from './ground-stations.ts';
import type { Crossing, Gap, LineElement } from './line.ts';
import { type Waypoint, waypointLine } from './pole-headings.ts';

/** How an obstacle is ridden. */
export interface PassageRide {
  readonly passage: Passage;
  readonly gait: Gait;
  readonly horse: Horse;
}

/** What has been added so far. Distances are metres along the passage from its first station. */
export interface PassageDraft {
  readonly ride: PassageRide;
  /** The obstacle's id. */
  readonly obstacle: string;
  readonly elements: LineElement[];
  readonly crossings: Crossing[];
  readonly gaps: Gap[];
  length: Metres;
  /** Where the horse stands, on the ground; undefined before the first station. */
  here: Pose | undefined;
  /** Waypoints that will be ridden as one path, not laid out yet. */
  waypoints: Waypoint[];
}

/** A station that is reached by backing, side passing or working. */
type PoseStation = Extract<GroundStation, { kind: 'reach' }>;

/**
 * Working a gate, a horse follows a path up to this many times the straight; else it steps sideways and turns.
 * Estimate.
 */
const DIRECT_RATIO = 1.3;
/** Headings nearer than this need no turn on the spot, radians. */
const SAME_HEADING = 1e-6;
/** Backing, the horse faces against its path. */
const REVERSED: Radians = Math.PI;

/** The time to move along a path, without the time for transitions before and after it. */
function movingTime(move: Move, length: Metres, { gait, horse }: PassageRide): Seconds {
  switch (move) {
    case 'ride':
      return length / speed(horse, gait);
    case 'back':
      return (length / horse.back.step.value) * horse.back.period.value;
    case 'side-pass':
      return (length / horse.sidePass.step.value) * horse.sidePass.period.value;
    case 'work':
      return horse.gate.value;
    case 'turn':
      return 0;
  }
}

/** The heading against the path, the turn on the spot, and the time where the usual one does not apply. */
interface ElementOptions {
  readonly facing?: Radians;
  readonly turn?: Radians;
  readonly time?: Seconds | undefined;
}

function addElement(draft: PassageDraft, move: Move, path: Path, options: ElementOptions = {}): void {
  const { facing = 0, turn = 0, time } = options;
  const { gait, horse } = draft.ride;
  const length = pathLength(path);
  const turning = (Math.abs(turn) / (2 * Math.PI)) * horse.turn.value;
  const moving = time ?? movingTime(move, length, draft.ride) + turning;
  draft.elements.push({
    leg: 0,
    part: 'obstacle',
    move,
    gait: move === 'ride' ? gait : 'walk',
    path,
    from: draft.length,
    length,
    facing,
    turn,
    seconds: moving,
    moving,
  });
  draft.length += length;
}

/** Adds the crossings on a path, and the gaps between poles that follow each other on it. */
function addCrossings(draft: PassageDraft, path: Path, waypoints: ReturnType<typeof waypointLine>['waypoints']): void {
  let before: PoleOnPath | undefined;
  for (const { over, pose, at, skew } of waypoints) {
    if (over === undefined) {
      // A waypoint around something lies between the two poles: they are not neighbours.
      before = undefined;
      continue;
    }
    const { pole, fraction } = over;
    const along = draft.length + at;
    draft.crossings.push({ leg: 0, obstacle: draft.obstacle, key: pole.key, at: along, pose, fraction, skew });
    const now: PoleOnPath = { pole, pose, at };
    if (before !== undefined && before.pole !== pole) {
      draft.gaps.push(gapBetween(path, [before, now], { ...draft.ride, start: draft.length }));
    }
    before = now;
  }
}

/** Lays out the pending waypoints as one path at the passage's gait. Does nothing when there are none. */
export function addRide(draft: PassageDraft): void {
  const [first] = draft.waypoints;
  if (first === undefined) return;
  const { horse, gait } = draft.ride;
  const line = waypointLine(draft.waypoints, minTurnRadius(horse, gait));
  addCrossings(draft, line.path, line.waypoints);
  draft.here = line.waypoints.at(-1)?.pose ?? first.pose;
  draft.waypoints = [];
  // One pole alone has no length, but a gait in which it is ridden over.
  if (line.waypoints.length > 1) addElement(draft, 'ride', line.path);
  else if (first.over !== undefined) addElement(draft, 'ride', pathFrom(draft.here, []));
}

/** Turns on the spot by a signed angle. `time`: where it is not the horse's own. */
export function addTurn(draft: PassageDraft, by: Radians, time?: Seconds): void {
  const { here } = draft;
  if (here === undefined) return;
  addElement(draft, 'turn', pathFrom(here, []), { turn: by, time });
  draft.here = { ...here, angle: here.angle + by };
}

/**
 * Turns about the front or the hind feet by a signed angle: the middle of the hoof base goes round them sideways, on an arc
 * of half the wheelbase.
 */
export function addPivot(draft: PassageDraft, by: Radians, about: Pivot): void {
  const { here } = draft;
  if (here === undefined || by === 0) return;
  const radius = draft.ride.horse.wheelbase.value / 2;
  const hand = Math.sign(by);
  // About feet in front a turn to the left takes the middle to the right; about those behind, to the left.
  const facing = (about === 'forehand' ? hand : -hand) * (Math.PI / 2);
  const start = { ...here, angle: here.angle - facing };
  const path = pathFrom(start, [{ length: Math.abs(by) * radius, curvature: hand / radius }]);
  const time = (Math.abs(by) / (2 * Math.PI)) * draft.ride.horse.turn.value;
  addElement(draft, 'turn', path, { facing, time });
  const end = pathEnd(path);
  draft.here = { ...end, angle: end.angle + facing };
}

/** Goes straight to a place with the heading kept. */
function addTranslation(draft: PassageDraft, move: Move, from: Pose, to: Pose): void {
  const length = distance(from, to);
  if (length < TOUCH) {
    // Work on the spot takes its time; any other move without a distance is left out.
    if (move === 'work') addElement(draft, move, pathFrom(from, []));
    return;
  }
  const direction = Math.atan2(to.y - from.y, to.x - from.x);
  const path = pathFrom({ ...from, angle: direction }, [{ length, curvature: 0 }]);
  addElement(draft, move, path, { facing: normalizeAngle(from.angle - direction) });
}

function addBack(draft: PassageDraft, here: Pose, to: Pose): void {
  const reversed = (pose: Pose): Pose => ({ ...pose, angle: pose.angle + REVERSED });
  const { path } = connection(reversed(here), reversed(to), draft.ride.horse.back.leastTurn.value);
  addElement(draft, 'back', path, { facing: REVERSED });
}

function addSidePass(draft: PassageDraft, here: Pose, to: Pose): void {
  const by = normalizeAngle(to.angle - here.angle);
  if (Math.abs(by) > SAME_HEADING) addTurn(draft, by);
  addTranslation(draft, 'side-pass', draft.here ?? here, to);
}

/** The turn from one heading to another; a half turn goes to the side on which the target lies. */
function turnTowards(from: Pose, to: Pose): Radians {
  const by = normalizeAngle(to.angle - from.angle);
  if (Math.abs(by) < Math.PI - SAME_HEADING) return by;
  const side = Math.cos(from.angle) * (to.y - from.y) - Math.sin(from.angle) * (to.x - from.x);
  return side < 0 ? -Math.abs(by) : Math.abs(by);
}

/** Works an object on the way to a pose: along a biarc where it is short, else sideways and then a turn. */
function addWork(draft: PassageDraft, here: Pose, to: Pose): void {
  const arcs = biarc(here, to);
  if (arcs !== undefined && pathLength(arcs) < DIRECT_RATIO * distance(here, to)) {
    addElement(draft, 'work', arcs);
    return;
  }
  const by = turnTowards(here, to);
  addTranslation(draft, 'work', here, to);
  draft.here = { ...to, angle: here.angle };
  // The time at the gate includes the turn.
  if (Math.abs(by) > SAME_HEADING) addTurn(draft, by, 0);
}

/** Goes to a station by its move. A station that is ridden to is a waypoint and adds nothing here. */
export function addMove(draft: PassageDraft, { move, pose }: PoseStation): void {
  const { here } = draft;
  if (here === undefined || move === 'ride') return;
  if (move === 'back') addBack(draft, here, pose);
  else if (move === 'side-pass') addSidePass(draft, here, pose);
  else addWork(draft, here, pose);
  draft.here = pose;
}
