import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { along, holdOf, pairOf, residual, slope } from './grip.ts';

function clear(held: readonly Held[]): Residual {
  const [first, second] = pairOf(held, 'apart');
  const a = holdOf(first);
  const b = holdOf(second);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const far = Math.hypot(dx, dy);
  // Two things on one spot have no direction between them: any one parts them.
  const gx = far === 0 ? 1 : dx / far;
  const gy = far === 0 ? 0 : dy / far;
  return residual(far - (first.width + second.width) / 2, slope(a, -gx, -gy), slope(b, gx, gy));
}

/**
 * The clear distance between two small things (markers, barrels, posts) on the straight from one gripped point to the
 * other; each counts with half its width, as if it faced the other.
 */
export const apart: ConstraintKind = {
  id: 'apart',
  title: 'Distance between',
  unit: 'm',
  takes: ['piece', 'piece'],
  suits: ['small', 'small'],
  measure: (held) => clear(held).value,
  residuals(held, hold) {
    const now = clear(held);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  tape(held) {
    const [first, second] = pairOf(held, 'apart');
    const [a, b] = [holdOf(first), holdOf(second)];
    const far = Math.hypot(b.x - a.x, b.y - a.y);
    const way = far === 0 ? { ux: 1, uy: 0 } : { ux: (b.x - a.x) / far, uy: (b.y - a.y) / far };
    return [along(a, way, first.width / 2), along(b, way, -second.width / 2)];
  },
  sentence: ([first, second], value) => `${first} and ${second} are ${value} apart.`,
};
