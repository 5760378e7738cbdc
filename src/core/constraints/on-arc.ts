import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { holdOf, middleOf, pairOf, residual, slope } from './grip.ts';

function radius(held: readonly Held[]): Residual {
  const [centre, piece] = pairOf(held, 'on-arc');
  const a = middleOf(centre);
  const b = holdOf(piece);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const far = Math.hypot(dx, dy);
  // On the very centre there is no direction outwards: any one leads away.
  const gx = far === 0 ? 1 : dx / far;
  const gy = far === 0 ? 0 : dy / far;
  return residual(far, slope(a, -gx, -gy), slope(b, gx, gy));
}

/** The second's gripped point lies on an arc about the middle of the first, a marker as a rule. The value is its radius. */
export const onArc: ConstraintKind = {
  id: 'on-arc',
  title: 'On an arc about',
  unit: 'm',
  takes: ['piece', 'piece'],
  suits: ['small', 'any'],
  measure: (held) => radius(held).value,
  residuals(held, hold) {
    const now = radius(held);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  tape(held) {
    const [centre, piece] = pairOf(held, 'on-arc');
    const [a, b] = [middleOf(centre), holdOf(piece)];
    return [
      { x: a.x, y: a.y },
      { x: b.x, y: b.y },
    ];
  },
  sentence: ([centre, piece], value) => `${piece} lies on an arc of ${value} radius about ${centre}.`,
};
