import { pieceSizes, piecesBoundBy, sizeCheck } from '../findings/dimension.ts';

export const waterBoxWidth = sizeCheck({
  id: 'water-box-width',
  says: 'A water box is wide enough.',
  because: 'A horse steps round what it can, and beside what is narrow.',
  weight: 'should',
  limit: 'water-box.width',
  what: 'the width of',
  param: 'width',
  sizes: (obstacle) => pieceSizes(piecesBoundBy(obstacle, 'water-box.width'), ({ figure }) => figure.width),
});

export const waterBoxLength = sizeCheck({
  id: 'water-box-length',
  says: 'A water box is long enough to be walked through, and no longer than a set can carry.',
  because: 'A short one is jumped, a long one is refused.',
  weight: 'should',
  limit: 'water-box.length',
  what: 'the length of',
  param: 'length',
  sizes: (obstacle) => pieceSizes(piecesBoundBy(obstacle, 'water-box.length'), ({ figure }) => figure.length),
});
