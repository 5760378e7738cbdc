import { clearanceBetween, piecesOfKind, sizeCheck } from '../findings/dimension.ts';

export const sidePassRoom = sizeCheck({
  id: 'side-pass-room',
  says: 'The poles of a side pass are not too near each other.',
  because: 'A horse that goes sideways between two poles needs its feet clear of both.',
  weight: 'must',
  limit: 'side-pass.parallel',
  what: 'the room between the poles of',
  param: 'gap',
  sizes(obstacle) {
    const [first, second] = piecesOfKind(obstacle, 'pole');
    if (obstacle.obstacle.kind !== 'side-pass-between' || first === undefined || second === undefined) return [];
    return [clearanceBetween(first, second)];
  },
});
