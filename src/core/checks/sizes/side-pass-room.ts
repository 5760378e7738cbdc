import { clearanceBetween, polesOf, sizeCheck } from '../findings/dimension.ts';

export const sidePassRoom = sizeCheck({
  id: 'side-pass-room',
  says: 'The poles of a side pass are not too near each other.',
  because: 'A horse that goes sideways between two poles needs its feet clear of both.',
  weight: 'must',
  limit: 'side-pass.parallel',
  what: 'the room between the poles of',
  param: 'gap',
  onlyDeclared: true,
  sizes(obstacle) {
    const [first, second] = polesOf(obstacle);
    return first === undefined || second === undefined ? [] : [clearanceBetween(first, second)];
  },
});
