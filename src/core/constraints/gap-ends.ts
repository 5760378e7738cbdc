import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { gapTape, taped } from './gap.ts';
import { pairOf } from './grip.ts';

/** The poles gripped at their −x ends, then at their +x ends; the second's the other way round when it lies end for end. */
function ends(held: readonly Held[]): readonly (readonly [Held, Held])[] {
  const [first, second] = pairOf(held, 'gap-ends');
  const turned = Math.cos(second.pose.angle - first.pose.angle) < 0;
  return [0, 1].map((at) => [
    { ...first, at },
    { ...second, at: turned ? 1 - at : at },
  ]);
}

function gaps(held: readonly Held[], side: 1 | -1): readonly Residual[] {
  return ends(held).map((pair) => taped(pair, side));
}

/** The same gap at both ends of two poles of one length, inside to inside: two equations. `measure` is at the −x end. */
export const gapEnds: ConstraintKind = {
  id: 'gap-ends',
  title: 'Gap at both ends',
  unit: 'm',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  sided: true,
  measure: (held, side) => gaps(held, side)[0]?.value ?? 0,
  residuals: (held, hold, side) => gaps(held, side).map(({ value, gradient }) => ({ value: value - hold, gradient })),
  tape: (held) => gapTape(ends(held)[0] ?? held),
  sentence: ([first, second], value) =>
    `The gap between ${first} and ${second} is ${value} at both ends, inside to inside.`,
};
