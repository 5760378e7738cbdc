/** A way over an obstacle as a rider is told it: its title, with what its stations know and the title leaves out. */

import type { PlacedObstacle, PlacedPiece } from '../core/course/placed.ts';
import type { Radians } from '../core/measure/quantity.ts';
import type { Passage, Station } from '../core/obstacles/passage.ts';
import { compose, type Pose } from '../core/plane/pose.ts';

/** Which end or side is a designer's word: on a pattern the line shows it. */
const ENDS = /,? (from|at) the (other end|far side)|, facing the other way/g;

const TURNS: Readonly<Record<string, string>> = {
  'a full turn': '360°',
  'half a turn': '180°',
  'a quarter turn': '90°',
};

function handOf(by: Radians): 'left' | 'right' {
  return by > 0 ? 'left' : 'right';
}

function degrees(by: Radians): string {
  return `${Math.round((Math.abs(by) * 180) / Math.PI)}°`;
}

/** Whether a station is more than riding on: backing, side passing, turning or working. */
export function isHandled(station: Station): boolean {
  return station.kind === 'reach' ? station.move !== 'ride' : station.kind === 'turn';
}

function poseAt({ pieces }: PlacedObstacle, station: Station | undefined): Pose | undefined {
  if (station?.kind !== 'reach') return undefined;
  const on = pieces.find(({ piece }) => piece.id === station.piece);
  return on === undefined ? undefined : compose(on.pose, station.pose);
}

/** The turn at a corner that is side-passed: where, how far, and how the horse goes on. */
interface CornerTurn {
  readonly by: Radians;
  /** Which feet are on the inside of the corner: those on whose side it goes on. */
  readonly inside: 'forefeet' | 'hind feet';
  /** The hand to which it goes on. */
  readonly onwards: 'left' | 'right';
}

function cornerTurn(obstacle: PlacedObstacle, { stations }: Passage): CornerTurn | undefined {
  const first = stations.findIndex((station, i) => station.kind === 'turn' && i > 1);
  const last = stations.findLastIndex(({ kind }) => kind === 'turn');
  const [here, next] = [poseAt(obstacle, stations[first - 1]), poseAt(obstacle, stations[last + 1])];
  if (first === -1 || here === undefined || next === undefined) return undefined;
  // Round a corner wider than square the turn is made in two halves.
  const by = stations.reduce((sum, station) => sum + (station.kind === 'turn' ? station.by : 0), 0);
  const [dx, dy] = [next.x - here.x, next.y - here.y];
  const ahead = dx * Math.cos(here.angle) + dy * Math.sin(here.angle);
  const leftward = dy * Math.cos(next.angle) - dx * Math.sin(next.angle);
  return { by, inside: ahead > 0 ? 'forefeet' : 'hind feet', onwards: leftward > 0 ? 'left' : 'right' };
}

/** "with a turn on the forehand at the corner", told in full: feet, degrees, hand, and how it goes on. */
function withCorner(title: string, corner: CornerTurn | undefined): string {
  if (corner === undefined) return title;
  const { by, inside, onwards } = corner;
  return title.replace(/,? with a turn on the (forehand|haunches) at the corner/, (_, on: string) => {
    const turn = `turn on the ${on} ${degrees(by)} to the ${handOf(by)} at the corner`;
    return ` with the ${inside} inside, ${turn}, and side pass ${onwards} to the end`;
  });
}

function isRaised({ figure, kind }: PlacedPiece): boolean {
  return kind.id === 'pole' && figure.height > figure.width + 1e-6;
}

/** Whether a pole that the way crosses is raised at an end. */
function crossesRaised({ pieces }: PlacedObstacle, { stations }: Passage): boolean {
  return stations.some(
    (station) =>
      station.kind === 'cross' && pieces.some((piece) => piece.piece.id === station.piece && isRaised(piece)),
  );
}

/**
 * The passage as it is told on a pattern: a verb phrase without its gait. Turns are in degrees with their direction;
 * the end is named only where the obstacle has been ridden `before`.
 */
export function passageWords(passage: Passage, obstacle: PlacedObstacle, before: boolean): string {
  const turn = passage.stations.find((station) => station.kind === 'turn');
  const told = withCorner(passage.title, cornerTurn(obstacle, passage))
    .replace(ENDS, (end) => (before ? end : ''))
    .replace(/^ride (into .+?),? and back out/, (_, into: string) => `${into}, stop, and back out`)
    .replace(/^ride /, '')
    .replace(/\b(a full turn|half a turn|a quarter turn)( to the)? (left|right)\b/g, (_, turned: string, _to, hand) => {
      return `turn ${TURNS[turned]} to the ${hand}`;
    })
    .replace(/\bturn and back\b/g, (plain) => {
      if (turn === undefined) return plain;
      return `turn ${degrees(turn.by)} to the ${handOf(turn.by)}, back`;
    });
  // "a, back up b, and back out": only the last of several has its "and".
  const listed = told.startsWith('turn ') && !/, and /.test(told) ? told.replace(/, back /, ', and back ') : told;
  return crossesRaised(obstacle, passage) ? listed.replace(/\bthe (poles?)\b/, 'the raised $1') : listed;
}
