import { pieceSizes, piecesBoundBy, sizeCheck } from '../findings/dimension.ts';

export const poleLength = sizeCheck({
  id: 'pole-length',
  says: 'Poles have a length that is in use.',
  because: 'A short pole is run out beside, a very long one cannot be carried or kept straight.',
  weight: 'note',
  limit: 'pole.length',
  what: 'the length of a pole of',
  param: 'length',
  sizes: (obstacle) => pieceSizes(piecesBoundBy(obstacle, 'pole.length'), ({ figure }) => figure.length),
});
