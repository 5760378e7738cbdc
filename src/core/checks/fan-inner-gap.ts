import { clearBetween, dimension, piecesOf } from './dimension.ts';

export const fanInnerGap = dimension({
  id: 'fan-inner-gap',
  says: 'The inner ends of a fan lie a boot’s length apart.',
  because: 'Ends that lie closer catch a hoof that is placed a little too far in.',
  weight: 'should',
  limit: 'fan.inner-gap',
  what: 'at the inner ends, the gap of',
  param: 'innerGap',
  sizes(obstacle) {
    if (obstacle.obstacle.kind !== 'fan') return [];
    const poles = piecesOf(obstacle, 'pole');
    return poles.slice(1).flatMap((pole, i) => {
      const before = poles[i];
      return before === undefined ? [] : [clearBetween(before, pole)];
    });
  },
});
