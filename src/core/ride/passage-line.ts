import type { PlacedObstacle } from '../course/placed.ts';
import { type Gait, type Horse, speed } from '../horses/horse.ts';
import { minTurnRadius } from '../horses/turns.ts';
import type { Metres, Radians, Seconds } from '../measure/quantity.ts';
import type { Move, Passage } from '../obstacles/passage.ts';
import { type Path, pathFrom, pathLength } from '../plane/path.ts';
import { distance, TOUCH } from '../plane/point.ts';
import { normalizeAngle, type Pose } from '../plane/pose.ts';
import { biarc, connection } from './connection.ts';
import { gapBetween, type PoleOnPath } from './gaps.ts';
import { type GroundStation, groundStations } from './ground-stations.ts';
import type { Crossing, Gap, LineElement, RideBreak } from './line.ts';
import { type Waypoint, waypointLine } from './pole-headings.ts';

/** How an obstacle is ridden. */
export interface PassageRide {
  readonly passage: Passage;
  readonly gait: Gait;
  readonly horse: Horse;
}

/** The line over one obstacle, measured from its first station, before it has its place in the go. */
export interface PassageLine {
  /** Where the horse comes in, and where and how it stands when it is through. */
  readonly start: Pose;
  readonly end: Pose;
  /** Whether it comes in over a pole, and leaves riding over one: then it wants to be straight before and after. */
  readonly entersOver: boolean;
  readonly leavesOver: boolean;
  /** Keys of the pieces of its first and last station. */
  readonly firstPiece: string;
  readonly lastPiece: string;
  readonly elements: readonly LineElement[];
  readonly crossings: readonly Crossing[];
  readonly gaps: readonly Gap[];
  readonly breaks: readonly RideBreak[];
  readonly length: Metres;
}

/** Working a gate a horse follows a path up to this many times the straight; else it steps over and turns. Estimate. */
const DIRECT_RATIO = 1.3;
/** Headings nearer than this need no turn on the spot, radians. */
const SAME_HEADING = 1e-6;

type PoseStation = Extract<GroundStation, { kind: 'reach' }>;

/** What it takes to move along a path, without what comes before and after it. */
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

/** Where it faces against its path, how far it turns on the spot, and the time when it is not its own. */
interface ElementOptions {
  readonly facing?: Radians;
  readonly turn?: Radians;
  readonly time?: Seconds | undefined;
}

const REVERSED = Math.PI;

/** The turn from one heading to another; a full about-turn goes towards the side on which the place lies. */
function turnTowards(from: Pose, to: Pose): Radians {
  const by = normalizeAngle(to.angle - from.angle);
  if (Math.abs(by) < Math.PI - SAME_HEADING) return by;
  const side = Math.cos(from.angle) * (to.y - from.y) - Math.sin(from.angle) * (to.x - from.x);
  return side < 0 ? -Math.abs(by) : Math.abs(by);
}

/** The line over an obstacle; absent when its passage has no place on the ground to begin at. */
export function passageLine(obstacle: PlacedObstacle, riding: PassageRide): PassageLine | undefined {
  const elements: LineElement[] = [];
  const crossings: Crossing[] = [];
  const gaps: Gap[] = [];
  const breaks: RideBreak[] = [];
  const { horse, gait } = riding;
  let along: Metres = 0;
  let here: Pose | undefined;
  let waypoints: Waypoint[] = [];

  const addElement = (move: Move, path: Path, { facing = 0, turn = 0, time }: ElementOptions = {}): void => {
    const length = pathLength(path);
    const turning = (Math.abs(turn) / (2 * Math.PI)) * horse.turn.value;
    const moving = time ?? movingTime(move, length, riding) + turning;
    elements.push({
      leg: 0,
      part: 'obstacle',
      move,
      gait: move === 'ride' ? gait : 'walk',
      path,
      from: along,
      length,
      facing,
      turn,
      seconds: moving,
      moving,
    });
    along += length;
  };

  const rideWaypoints = (): void => {
    const [first] = waypoints;
    if (first === undefined) return;
    const line = waypointLine(waypoints, minTurnRadius(horse, gait));
    let before: PoleOnPath | undefined;
    for (const { over, pose, at, skew } of line.waypoints) {
      if (over === undefined) {
        // Round something between two poles: they do not follow each other.
        before = undefined;
        continue;
      }
      const { pole, fraction } = over;
      crossings.push({ leg: 0, obstacle: obstacle.obstacle.id, key: pole.key, at: along + at, pose, fraction, skew });
      const now: PoleOnPath = { pole, pose, at };
      if (before !== undefined && before.pole !== pole)
        gaps.push(gapAt(gapBetween(line.path, [before, now], riding), along));
      before = now;
    }
    here = line.waypoints.at(-1)?.pose ?? first.pose;
    waypoints = [];
    if (line.waypoints.length > 1) addElement('ride', line.path);
  };

  const turnBy = (by: number, time?: Seconds): void => {
    if (here === undefined) return;
    addElement('turn', pathFrom(here, []), { turn: by, time });
    here = { ...here, angle: here.angle + by };
  };

  /** Straight to the place with the heading kept, facing where it already faces. */
  const translate = (move: Move, { pose }: PoseStation): void => {
    if (here === undefined) return;
    const length = distance(here, pose);
    if (length < TOUCH) {
      // Work on the spot takes its time; any other move that goes nowhere is none.
      if (move === 'work') addElement(move, pathFrom(here, []));
      return;
    }
    const way = Math.atan2(pose.y - here.y, pose.x - here.x);
    addElement(move, pathFrom({ ...here, angle: way }, [{ length, curvature: 0 }]), {
      facing: normalizeAngle(here.angle - way),
    });
  };

  const moveTo = (station: PoseStation): void => {
    if (here === undefined) return;
    switch (station.move) {
      case 'ride':
        return;
      case 'back': {
        const from = { ...here, angle: here.angle + REVERSED };
        const to = { ...station.pose, angle: station.pose.angle + REVERSED };
        addElement('back', connection(from, to, horse.back.leastTurn.value).path, { facing: REVERSED });
        break;
      }
      case 'side-pass': {
        const by = normalizeAngle(station.pose.angle - here.angle);
        if (Math.abs(by) > SAME_HEADING) turnBy(by);
        translate('side-pass', station);
        break;
      }
      case 'work': {
        const smooth = biarc(here, station.pose);
        if (smooth !== undefined && pathLength(smooth) < DIRECT_RATIO * distance(here, station.pose))
          addElement('work', smooth);
        else {
          const by = turnTowards(here, station.pose);
          translate('work', station);
          here = { ...station.pose, angle: here.angle };
          // The time at the gate covers the turn.
          if (Math.abs(by) > SAME_HEADING) turnBy(by, 0);
        }
        break;
      }
    }
    here = station.pose;
  };

  let start: Waypoint | undefined;
  let [firstPiece, lastPiece] = ['', ''];
  for (const station of groundStations(obstacle, riding.passage)) {
    if (station.kind === 'missing') {
      breaks.push({
        leg: 0,
        at: { x: obstacle.obstacle.pose.x, y: obstacle.obstacle.pose.y },
        why: `The way ${riding.passage.title} needs the piece "${station.piece}", which is not there.`,
      });
      continue;
    }
    if (station.kind === 'turn') {
      rideWaypoints();
      turnBy(station.by);
      continue;
    }
    lastPiece = station.kind === 'cross' ? station.pole.key : station.piece.key;
    if (start === undefined) firstPiece = lastPiece;
    if (station.kind === 'cross' || station.move === 'ride' || start === undefined) {
      const waypoint: Waypoint =
        station.kind === 'cross'
          ? { pose: station.pose, over: { pole: station.pole, fraction: station.fraction } }
          : { pose: station.pose };
      start ??= waypoint;
      if (waypoints.length === 0 && here !== undefined) waypoints.push({ pose: here });
      waypoints.push(waypoint);
      continue;
    }
    rideWaypoints();
    moveTo(station);
  }
  const leavesOver = waypoints.at(-1)?.over !== undefined;
  rideWaypoints();
  const first = crossings[0];
  if (start === undefined || here === undefined) return undefined;
  return {
    // Over a pole the line may be a little off square, and comes in as it crosses.
    start: start.over !== undefined && first !== undefined ? first.pose : start.pose,
    end: here,
    entersOver: start.over !== undefined,
    leavesOver,
    firstPiece,
    lastPiece,
    elements,
    crossings,
    gaps,
    breaks,
    length: along,
  };
}

function gapAt(gap: Gap, along: Metres): Gap {
  return {
    ...gap,
    from: gap.from + along,
    to: gap.to + along,
    landings: { ...gap.landings, places: gap.landings.places.map((place) => ({ ...place, at: place.at + along })) },
  };
}
