import { pieceSizes, piecesBoundBy, sizeCheck } from '../findings/dimension.ts';

export const bridgeWidth = sizeCheck({
  id: 'bridge-width',
  says: 'A bridge is wide enough.',
  because: 'On a narrow bridge a horse that is not quite straight steps off its side.',
  weight: 'must',
  limit: 'bridge.width',
  what: 'the width of',
  param: 'width',
  sizes: (obstacle) => pieceSizes(piecesBoundBy(obstacle, 'bridge.width'), ({ figure }) => figure.width),
});

export const bridgeLength = sizeCheck({
  id: 'bridge-length',
  says: 'A bridge is long enough to be walked over.',
  because: 'A horse jumps what is too short to be stepped on with all four feet.',
  weight: 'must',
  limit: 'bridge.length',
  what: 'the length of',
  param: 'length',
  sizes: (obstacle) => pieceSizes(piecesBoundBy(obstacle, 'bridge.length'), ({ figure }) => figure.length),
});
