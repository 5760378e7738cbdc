import type { Wall } from '../../constraints/constraint.ts';
import type { PlacedPiece } from '../../course/placed.ts';
import { FOOT, type Metres } from '../../measure/quantity.ts';
import { type Ground, observedOn, wallLength } from '../ground.ts';
import { type Candidate, isSmall } from '../observables.ts';
import type { SetOutCrew } from '../setout.ts';
import type { Weighed } from './candidates.ts';
import { weighed } from './candidates.ts';

const WALLS = ['south', 'east', 'north', 'west'] as const satisfies readonly Wall[];

/** Places on a wall for a tape are whole numbers of these from its corner, metres: a crew finds them again. */
const RAIL_STEP = { ft: 5 * FOOT, m: 1 } as const;

/** The two walls that are nearest to a piece, one of each pair that face each other. */
function nearWalls(ground: Ground, piece: PlacedPiece): readonly Wall[] {
  const off = (wall: Wall): Metres =>
    observedOn(ground, { kind: 'off-wall', grips: [{ piece: piece.key, at: 0.5 }, { wall }], side: 1 }).value;
  const [south, east, north, west] = WALLS;
  return [off(south) <= off(north) ? south : north, off(west) <= off(east) ? west : east];
}

function alongWall(ground: Ground, piece: string, at: number, wall: Wall): Candidate {
  const length = wallLength(ground, wall);
  const of: Candidate = { kind: 'along-wall', grips: [{ piece, at }, { wall }], side: 1, from: 0 };
  // From the nearer corner: a tape is as short as it can be.
  return observedOn(ground, of).value <= length / 2 ? of : { ...of, from: length, runs: -1 };
}

/** Tapes from two places on the wall, on either side of the gripped point and about as far from it as it is off the wall. */
function fromRail(ground: Ground, piece: string, at: number, wall: Wall, crew: SetOutCrew): readonly Candidate[] {
  const grips = [{ piece, at }, { wall }] as const;
  const foot = observedOn(ground, { kind: 'along-wall', grips, side: 1 }).value;
  const off = observedOn(ground, { kind: 'off-wall', grips, side: 1 }).value;
  const step = RAIL_STEP[crew.marked];
  return [foot - off, foot + off].flatMap((wanted): Candidate[] => {
    const from = Math.round(wanted / step) * step;
    return from < 0 || from > wallLength(ground, wall) ? [] : [{ kind: 'from-rail', grips, side: 1, from }];
  });
}

/**
 * How the first piece of a part can be found from the walls: how far off them its ends are, how far along them from a corner,
 * and tapes from two places on a wall.
 */
export function wallCandidates(piece: PlacedPiece, ground: Ground, crew: SetOutCrew): readonly Weighed[] {
  const ends = isSmall(piece) ? [0.5] : [0, 1];
  const all = nearWalls(ground, piece).flatMap((wall) =>
    ends.flatMap((at): readonly Candidate[] => [
      { kind: 'off-wall', grips: [{ piece: piece.key, at }, { wall }], side: 1 },
      alongWall(ground, piece.key, at, wall),
      ...(crew.people > 1 ? fromRail(ground, piece.key, at, wall, crew) : []),
    ]),
  );
  return all.map((each) => weighed(each, piece.key, { ground, crew }));
}
