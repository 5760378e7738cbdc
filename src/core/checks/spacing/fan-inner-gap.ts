import { gap } from '../../constraints/gap.ts';
import type { PlacedPiece } from '../../course/placed.ts';
import { type MeasuredSize, middleOfPieces, polesOf, sizeCheck } from '../findings/dimension.ts';

/** The tape between the inner ends, as every gap is taped: straight, from near face to near face. */
function innerGap(a: PlacedPiece, b: PlacedPiece, side: 1 | -1): readonly MeasuredSize[] {
  const held = [a, b].map(({ pose, figure: { length, width } }) => ({ pose, length, width, at: 0 }));
  return [{ value: gap.measure(held, side), at: middleOfPieces([a, b]), keys: [a.key, b.key] }];
}

export const fanInnerGap = sizeCheck({
  id: 'fan-inner-gap',
  says: 'The inner ends of a fan lie a boot’s length apart.',
  because: 'Ends that lie closer catch a hoof that is placed a little too far in.',
  weight: 'should',
  limit: 'fan.inner-gap',
  what: 'at the inner ends, the gap of',
  param: 'innerGap',
  onlyDeclared: true,
  sizes(obstacle) {
    const poles = polesOf(obstacle);
    return poles.slice(1).flatMap((pole, i) => {
      const before = poles[i];
      return before === undefined ? [] : innerGap(before, pole, obstacle.obstacle.side);
    });
  },
});
