import type { Gait } from '../horses/horse.ts';
import type { Radians } from '../measure/quantity.ts';
import type { Pose } from '../plane/pose.ts';

/** How the horse gets to a station from the one before. `work`: it works the gate on the way. */
export type Move = 'ride' | 'back' | 'side-pass' | 'turn' | 'work';

/** The feet that tread in place in a turn. */
export type Pivot = 'forehand' | 'haunches';

/**
 * A place on a passage, anchored to a piece so that it moves with it. The line follows the middle of the hoof base.
 * `cross`: ridden forward, square over a pole, at a fraction along it (0 at its −x end); way 1 goes towards its +y side.
 * `reach`: the horse stands or passes at a pose in the piece's frame, heading where it faces.
 * `turn`: on the spot, by a signed angle (counter-clockwise positive), after the station before it. About the forehand the
 * front feet tread in place and the quarters go round, about the haunches the hind feet do; absent: about the middle.
 */
export type Station =
  | { readonly kind: 'cross'; readonly piece: string; readonly fraction: number; readonly way: 1 | -1 }
  | { readonly kind: 'reach'; readonly piece: string; readonly pose: Pose; readonly move: Exclude<Move, 'turn'> }
  | { readonly kind: 'turn'; readonly by: Radians; readonly about?: Pivot };

/** A way to ride an obstacle. Ids are unique in the obstacle and written into files. */
export interface Passage {
  readonly id: string;
  /** What a designer reads where a way is chosen: "over the fan", "back through the L". A pattern's words come from the stations. */
  readonly title: string;
  readonly gaits: readonly Gait[];
  /** The first station is a `cross` or a `reach`, with move `ride`. */
  readonly stations: readonly Station[];
}
