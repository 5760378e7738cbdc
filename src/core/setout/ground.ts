import type { Grip, GrippedPose } from '../constraints/constraint.ts';
import { grippedWall } from '../constraints/grip.ts';
import type { Arena } from '../course/course.ts';
import type { PlacedPiece } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import type { Pose } from '../plane/pose.ts';
import type { Residual } from '../solve/problem.ts';
import { isSmall } from './observables.ts';
import { observed } from './observe.ts';
import type { Observable } from './setout.ts';

/** The arena and its pieces, as observations see them. */
export interface Ground {
  readonly arena: Arena;
  readonly pieces: ReadonlyMap<string, PlacedPiece>;
}

export function wallLength({ arena }: Pick<Ground, 'arena'>, wall: 'south' | 'east' | 'north' | 'west'): Metres {
  return wall === 'south' || wall === 'north' ? arena.length : arena.width;
}

/** A grip with its numbers where its piece is drawn, or at another pose by key. */
export function gripped({ arena, pieces }: Ground, grip: Grip, poses?: ReadonlyMap<string, Pose>): GrippedPose {
  if ('wall' in grip) return grippedWall(arena, grip.wall);
  const piece = pieces.get(grip.piece);
  if (piece === undefined) throw new Error(`set-out: there is no piece ${grip.piece}`);
  const { length, width } = piece.figure;
  return { pose: poses?.get(grip.piece) ?? piece.pose, length, width, at: grip.at ?? 0.5 };
}

/**
 * The value and the gradient of an observation: where the pieces are drawn, or at other poses by key. Throws when a grip
 * names a piece that is not there.
 */
export function observedOn(ground: Ground, of: Observable, poses?: ReadonlyMap<string, Pose>): Residual {
  const [first, second] = of.grips;
  const small = (grip: Grip): boolean => 'piece' in grip && isSmall(ground.pieces.get(grip.piece) as PlacedPiece);
  const pair = {
    gripped: [gripped(ground, first, poses), gripped(ground, second, poses)] as const,
    small: [small(first), small(second)] as const,
  };
  return observed(of, pair, 'wall' in second ? wallLength(ground, second.wall) : 0);
}
