import { laterPart } from '../later-part.ts';

/**
 * The checks, with the doors to what they find, so that no finding is there before its door. A desk without the checks
 * shows the course, and finds nothing yet.
 */
export const CHECKS_PART = laterPart(async () => {
  const [checks, doors] = await Promise.all([import('../../core/checks/checks.ts'), import('./finding-doors.ts')]);
  return { checks, doors };
});

/** What measures the ground that a horse sweeps: drawn at Check only. */
export const SWEEPS_PART = laterPart(() => import('../../core/checks/geometry/sweep.ts'));
