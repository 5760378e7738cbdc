import { laterPart } from '../later-part.ts';

/** The checks: a desk without them shows the course, and finds nothing yet. */
export const CHECKS_PART = laterPart(() => import('../../core/checks/checks.ts'));

/** What measures the ground that a horse sweeps: drawn at Check only. */
export const SWEEPS_PART = laterPart(() => import('../../core/checks/geometry/sweep.ts'));
