import type { ConstraintKind } from './constraint.ts';

/** The piece stays where it is. No equation: the solver is not given its pose to move. */
export const fixed: ConstraintKind = {
  id: 'fixed',
  title: 'Pinned',
  unit: 'none',
  takes: ['piece'],
  suits: ['any'],
  pins: true,
  measure: () => 0,
  residuals: () => [],
  sentence: ([piece]) => `${piece} is pinned.`,
};
