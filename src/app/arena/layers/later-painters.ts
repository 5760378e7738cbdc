/**
 * What the arena is painted with at other stages than the first. It comes after the first picture; until then the arena is
 * painted without it.
 */
import { type LaterPart, laterPart } from '../../later-part.ts';

/** Hoof prints, and the horse that rides the go. */
export const RIDE_PAINTERS = laterPart(() => import('./ride-painters.ts'));

/** The ground that a horse sweeps. */
export const CHECK_PAINTERS = laterPart(() => import('./check-painters.ts'));

/** Layouts that are compared, and change-overs. */
export const CHANGE_PAINTERS = laterPart(() => import('./change-painters.ts'));

export const LATER_PAINTERS: readonly LaterPart<unknown>[] = [RIDE_PAINTERS, CHECK_PAINTERS, CHANGE_PAINTERS];
