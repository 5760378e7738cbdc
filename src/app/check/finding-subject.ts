import type { Finding } from '../../core/checks/check.ts';
import { obstacleOf } from '../../core/course/ids.ts';

/**
 * The obstacle that a finding belongs to, by its keys: the only one, or the first of two. Undefined where it is about more,
 * or about none.
 */
export function subjectOf({ keys }: Pick<Finding, 'keys'>): string | undefined {
  const obstacles = [...new Set(keys.map(obstacleOf))];
  return obstacles.length > 2 ? undefined : obstacles[0];
}
