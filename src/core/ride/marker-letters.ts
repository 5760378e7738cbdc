/** The letters by which a pattern's words name single markers: "back between A and B". */
import type { Ride } from '../course/course.ts';
import type { PlacedObstacle, PlacedPiece } from '../course/placed.ts';
import type { Passage } from '../obstacles/passage.ts';

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** A … Z, then AA, AB … */
function letterAt(index: number): string {
  const last = ALPHABET.charAt(index % ALPHABET.length);
  return index < ALPHABET.length ? last : letterAt(Math.floor(index / ALPHABET.length) - 1) + last;
}

/** A thing that stands up in one spot, so that a horse goes between two of them or around one. */
function isMarker({ kind, figure }: PlacedPiece): boolean {
  return kind.extent === 'small' && figure.stands === 'standing';
}

/** The markers of an obstacle, of whatever kind of piece, by which a passage goes: those that have a station of it. */
export function markersOn({ pieces }: PlacedObstacle, { stations }: Passage): readonly PlacedPiece[] {
  const anchors = new Set(stations.flatMap((station) => (station.kind === 'reach' ? [station.piece] : [])));
  return pieces.filter((piece) => isMarker(piece) && anchors.has(piece.piece.id));
}

/**
 * By piece key: the letter of each marker that the words have to tell from another one. Letters run on from obstacle to
 * obstacle in the order of the go, so that none stands twice in a layout; in an obstacle they follow its pieces, so that
 * another way through it changes none.
 */
export function markerLetters(obstacles: readonly PlacedObstacle[], { legs }: Ride): ReadonlyMap<string, string> {
  const letters = new Map<string, string>();
  for (const id of new Set(legs.map(({ obstacle }) => obstacle))) {
    const placed = obstacles.find(({ obstacle }) => obstacle.id === id);
    if (placed === undefined) continue;
    const ways = placed.obstacle.passages.filter((passage) =>
      legs.some((leg) => leg.obstacle === id && leg.passage === passage.id),
    );
    const named = new Set(
      ways
        .map((way) => markersOn(placed, way))
        .filter((on) => on.length > 1)
        .flat(),
    );
    for (const piece of placed.pieces) if (named.has(piece)) letters.set(piece.key, letterAt(letters.size));
  }
  return letters;
}
