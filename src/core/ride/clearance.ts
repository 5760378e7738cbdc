/** How near a line may come to a piece. */
import type { PlacedPiece } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';

/** A hoof passes a thing on the ground at least this far from the line: half a stance and half a hoof. Estimate. */
const HOOF_CLEARANCE: Metres = 0.25;
/** The rider's stirrup passes a standing thing at least this far from the line: 18 in. Common practice, no source. */
const BODY_CLEARANCE: Metres = 0.4572;
/** No piece has a larger one. */
export const LARGEST_CLEARANCE: Metres = BODY_CLEARANCE;

/** The clearance that the line of a way keeps from a piece, metres. */
export function pieceClearance({ figure }: PlacedPiece): Metres {
  return figure.stands === 'standing' ? BODY_CLEARANCE : HOOF_CLEARANCE;
}
