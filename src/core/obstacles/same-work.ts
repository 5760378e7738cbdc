import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Obstacle } from './obstacle.ts';
import type { Passage, Station } from './passage.ts';

/** Turns that differ by less are the same turn, radians. */
const SAME_TURN = 1e-3;

/** A piece as the horse meets it, whichever way: its kind and sizes. A pole raised at one end is the same from both. */
function pieceText(obstacle: Obstacle, id: string): string {
  const piece = obstacle.pieces.find((each) => each.id === id);
  if (piece === undefined) return 'missing';
  return `${piece.kind} ${Object.values(piece.values).map(String).sort().join(' ')}`;
}

/** What a station asks of the horse, without the way in which it is come to and the hand on which it lies. */
function stationText(obstacle: Obstacle, station: Station): string {
  switch (station.kind) {
    case 'cross':
      return `cross ${pieceText(obstacle, station.piece)}`;
    case 'reach':
      return `reach ${station.move}`;
    case 'turn':
      return `turn ${Math.round(Math.abs(station.by) / SAME_TURN)} ${station.about ?? ''}`;
  }
}

const workTexts = memoizeByIdentity((passage: Passage, obstacle: Obstacle): string =>
  passage.stations
    .map((station) => stationText(obstacle, station))
    .sort()
    .join('; '),
);

/**
 * The passages of an obstacle that ask the same of the horse as this one, itself among them: as many of the same moves,
 * turns of the same size and crossings of such poles. Only the direction, the piece it begins at and the hand may differ: to
 * back through and to ride through are not the same work.
 */
export function sameWork(obstacle: Obstacle, passage: Passage): readonly Passage[] {
  const work = workTexts(passage, obstacle);
  return obstacle.passages.filter((each) => workTexts(each, obstacle) === work);
}
