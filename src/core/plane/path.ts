import type { Metres } from '../measure/quantity.ts';
import type { Pose } from './pose.ts';

/** A piece of a path with constant curvature: 0 is straight, positive turns left. Curvature in 1/m. */
export interface Stretch {
  readonly start: Pose;
  readonly length: Metres;
  readonly curvature: number;
}

/** A smooth path: each stretch starts at the pose where the one before ended. */
export type Path = readonly Stretch[];
