/** What several kinds declare in the same words. */
import type { GapParam } from './obstacle.ts';

/** Limits about every obstacle that is backed through. */
export const BACKING_LIMITS = ['back.raised.height'] as const;
/** Limits about every obstacle that is side passed. */
export const SIDE_PASSING_LIMITS = ['side-pass.height', 'class.slow-entries'] as const;

/** The parameter `gap` is the taped gap itself. */
export const GAP_ITSELF: GapParam = { param: 'gap', value: (_, __, wanted) => wanted };
