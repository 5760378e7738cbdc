import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import type { Pose } from '../plane/pose.ts';
import { type GroundStation, groundStations } from './ground-stations.ts';
import type { Crossing, Gap, LineElement, RideBreak } from './line.ts';
import { addMove, addPivot, addRide, addTurn, type PassageDraft, type PassageRide } from './passage-draft.ts';
import type { Waypoint } from './pole-headings.ts';

/**
 * The line over one obstacle. Its legs are 0 and its distances metres from its first station, because it does not know
 * its place in the go.
 */
export interface PassageLine {
  /** Where the horse comes in, and where and how it stands when it is through. */
  readonly start: Pose;
  readonly end: Pose;
  /** Whether it comes in over a pole, and leaves over one: then the horse wants to be straight before and after. */
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

/** A station that lies on the ground, at a piece. */
type PlacedStation = Extract<GroundStation, { kind: 'cross' | 'reach' }>;

function waypointOf(station: PlacedStation): Waypoint {
  if (station.kind === 'reach') return { pose: station.pose };
  return { pose: station.pose, over: { pole: station.pole, fraction: station.fraction } };
}

function pieceOf(station: PlacedStation): string {
  return station.kind === 'cross' ? station.pole.key : station.piece.key;
}

/** A break for each piece that the passage names and the obstacle does not have. */
function missingPieces(
  obstacle: PlacedObstacle,
  { passage }: PassageRide,
  stations: readonly GroundStation[],
): readonly RideBreak[] {
  const { x, y } = obstacle.obstacle.pose;
  return stations.flatMap((station): RideBreak[] => {
    if (station.kind !== 'missing') return [];
    const why = `The way ${passage.title} needs the piece "${station.piece}", which is not there.`;
    return [{ leg: 0, at: { x, y }, why }];
  });
}

/** Adds one station: a waypoint waits for the next ones, any other move ends the path before it. */
function addStation(draft: PassageDraft, station: PlacedStation): void {
  const isFirst = draft.here === undefined && draft.waypoints.length === 0;
  if (station.kind === 'cross' || station.move === 'ride' || isFirst) {
    if (draft.waypoints.length === 0 && draft.here !== undefined) draft.waypoints.push({ pose: draft.here });
    draft.waypoints.push(waypointOf(station));
    return;
  }
  addRide(draft);
  addMove(draft, station);
}

/** The line over an obstacle; undefined when none of its passage's stations lies on the ground. */
export function passageLine(obstacle: PlacedObstacle, ride: PassageRide): PassageLine | undefined {
  const draft: PassageDraft = {
    ride,
    obstacle: obstacle.obstacle.id,
    elements: [],
    crossings: [],
    gaps: [],
    length: 0,
    here: undefined,
    waypoints: [],
  };
  const stations = groundStations(obstacle, ride.passage);
  for (const station of stations) {
    if (station.kind === 'missing') continue;
    if (station.kind === 'turn') {
      addRide(draft);
      if (station.about === undefined) addTurn(draft, station.by);
      else addPivot(draft, station.by, station.about);
    } else addStation(draft, station);
  }
  const leavesOver = draft.waypoints.at(-1)?.over !== undefined;
  addRide(draft);
  const placed = stations.filter((station): station is PlacedStation => 'pose' in station);
  const [first, last] = [placed[0], placed.at(-1)];
  if (first === undefined || last === undefined || draft.here === undefined) return undefined;
  const { elements, crossings, gaps, length, here: end } = draft;
  return {
    // Over a pole the line may be a little off square, and the approach takes up that heading.
    start: first.kind === 'cross' ? (crossings[0]?.pose ?? first.pose) : first.pose,
    end,
    entersOver: first.kind === 'cross',
    leavesOver,
    firstPiece: pieceOf(first),
    lastPiece: pieceOf(last),
    elements,
    crossings,
    gaps,
    breaks: missingPieces(obstacle, ride, stations),
    length,
  };
}
