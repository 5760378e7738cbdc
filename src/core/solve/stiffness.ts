import type { Pose } from '../plane/pose.ts';
import type { System } from './system.ts';

/** Step of the finite difference between two gradients, metres or radians. */
const DELTA = 1e-5;

/**
 * The curvature of each coordinate under the given multipliers, in units of a weight: for each row |multiplier| ·
 * Σ|second derivative|, rotation brought to metres by the radius of gyration. Added to the weights it exceeds the true
 * curvature of the constraints, so that a step under load converges instead of oscillating. Call `evaluate` first;
 * residuals and gradients are left as they are.
 */
export function stiffness(system: System, radii: readonly number[], multipliers: Float64Array): Float64Array {
  const added = new Float64Array(3 * system.free);
  let row = 0;
  system.constraints.forEach((constraint, t) => {
    const indices = system.bodyIndices[t] ?? [];
    const poses = indices.map((at) => system.poses[at] as Pose);
    const here = constraint.residuals(poses);
    const from = row;
    row += here.length;
    if (here.every((_, r) => multipliers[from + r] === 0)) return;
    indices.forEach((by, j) => {
      if (by >= system.free) return;
      const radiusOfGyration = radii[by] as number;
      const { x, y, angle } = poses[j] as Pose;
      const shifts: readonly Pose[] = [
        { x: x + DELTA, y, angle },
        { x, y: y + DELTA, angle },
        { x, y, angle: angle + DELTA },
      ];
      shifts.forEach((shifted, axis) => {
        const unit = axis === 2 ? radiusOfGyration : 1;
        const there = constraint.residuals(poses.map((pose, i) => (i === j ? shifted : pose)));
        here.forEach((was, r) => {
          const multiplier = Math.abs(multipliers[from + r] as number);
          if (multiplier === 0) return;
          indices.forEach((body, i) => {
            if (body >= system.free) return;
            for (let k = 0; k < 3; k++) {
              const change = (there[r]?.gradient[i]?.[k] ?? 0) - (was.gradient[i]?.[k] ?? 0);
              const mine = k === 2 ? (radii[body] as number) : 1;
              const at = 3 * body + k;
              added[at] = (added[at] as number) + (multiplier * Math.abs(change) * mine) / (unit * DELTA);
            }
          });
        });
      });
    });
  });
  return added;
}
