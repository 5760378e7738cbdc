/** A passage as the steps in which a rider is told it: stations of the same move together, on the ground. */
import type { PlacedObstacle, PlacedPiece } from '../core/course/placed.ts';
import type { Radians } from '../core/measure/quantity.ts';
import type { Passage, Pivot, Station } from '../core/obstacles/passage.ts';
import { distance } from '../core/plane/point.ts';
import type { Pose } from '../core/plane/pose.ts';
import { groundStations } from '../core/ride/ground-stations.ts';
import type { Crossing } from '../core/ride/line.ts';

/** A station with where it lies on the ground; the horse faces along the pose. */
export interface PlacedStation {
  readonly station: Exclude<Station, { kind: 'turn' }>;
  readonly pose: Pose;
  readonly piece: PlacedPiece;
}

/** One move through its stations; `from` is where it begins, after a turn that was made there; absent for the first one. */
export interface MoveStep {
  readonly kind: 'ride' | 'back' | 'side-pass' | 'work';
  readonly from?: PlacedStation;
  readonly stations: readonly [PlacedStation, ...PlacedStation[]];
}

export interface TurnStep {
  readonly kind: 'turn';
  readonly at: Pose;
  readonly by: Radians;
  readonly about?: Pivot;
}

export type Step = MoveStep | TurnStep;

/** A side pass shorter than this between two turns the same way is a part of the turn: half a wheelbase and a hoof, about, m. */
const PART_OF_TURN = 0.8;

function moveOf(station: PlacedStation['station']): MoveStep['kind'] {
  return station.kind === 'cross' ? 'ride' : station.move;
}

/** The pose in which the horse is after a step; a turn changes the heading only. */
function poseAfter(step: Step | undefined): Pose | undefined {
  if (step?.kind === 'turn') return { ...step.at, angle: step.at.angle + step.by };
  return step?.stations.at(-1)?.pose;
}

/** Whether the last three steps are a turn in two halves with a step across between them. */
function isTurnInHalves([a, b, c]: readonly Step[]): boolean {
  if (a?.kind !== 'turn' || b?.kind !== 'side-pass' || c?.kind !== 'turn') return false;
  const [to] = b.stations;
  return a.about === c.about && a.by * c.by > 0 && distance(a.at, to.pose) < PART_OF_TURN;
}

/**
 * The steps of a passage in order. Stations on a piece that is not there are left out. Where the line's `crossings` of this
 * passage are given, a pole is crossed on their heading: the line may be off square to it.
 */
export function stepsOf(
  obstacle: PlacedObstacle,
  passage: Passage,
  crossings: readonly Crossing[] = [],
): readonly Step[] {
  const ahead = [...crossings];
  const ground = groundStations(obstacle, passage);
  const steps: Step[] = [];
  let last: PlacedStation | undefined;
  for (const [i, station] of passage.stations.entries()) {
    const placed = ground[i];
    const before = steps.at(-1);
    if (station.kind === 'turn') {
      const at = poseAfter(before);
      if (at === undefined) continue;
      const { by, about } = station;
      steps.push({ kind: 'turn', at, by, ...(about !== undefined && { about }) });
      const [first, , third] = steps.slice(-3);
      if (isTurnInHalves(steps.slice(-3)) && first?.kind === 'turn' && third?.kind === 'turn') {
        steps.splice(-3, 3, { ...first, by: first.by + third.by });
      }
      continue;
    }
    if (placed === undefined || !('pose' in placed)) continue;
    const piece = placed.kind === 'cross' ? placed.pole : placed.piece;
    const crossing = placed.kind === 'cross' && ahead[0]?.key === piece.key ? ahead.shift() : undefined;
    const here: PlacedStation = { station, pose: crossing?.pose ?? placed.pose, piece };
    const kind = last === undefined ? 'ride' : moveOf(station);
    if (before?.kind === kind) steps.splice(-1, 1, { ...before, stations: [...before.stations, here] });
    else
      steps.push({
        kind,
        stations: [here],
        ...(last !== undefined && { from: { ...last, pose: poseAfter(before) ?? last.pose } }),
      });
    last = here;
  }
  return steps;
}

/** The same, without the turns that stand between two moves of one kind: they become one move. */
export function withoutInnerTurns(steps: readonly Step[]): readonly Step[] {
  const kept: Step[] = [];
  for (const step of steps) {
    const [before, turn] = kept.slice(-2);
    if (turn?.kind === 'turn' && step.kind !== 'turn' && before?.kind === step.kind) {
      kept.splice(-2, 2, { ...before, stations: [...before.stations, ...step.stations] });
    } else kept.push(step);
  }
  return kept;
}
