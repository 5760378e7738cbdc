import { clearBetween, dimension, piecesOf } from './dimension.ts';

export const serpentineSpacing = dimension({
  id: 'serpentine-spacing',
  says: 'The markers of a serpentine stand far enough apart to be jogged.',
  because: 'Between markers that are too near, the horse has no stride left to change its bend.',
  weight: 'must',
  limit: 'serpentine.jog',
  what: 'base to base, the room between two markers of',
  param: 'gap',
  sizes(obstacle, survey) {
    const { id, kind } = obstacle.obstacle;
    const jogged = survey.layout.ride.legs.some((leg) => leg.obstacle === id && leg.gait !== 'walk');
    if (kind !== 'serpentine' || !jogged) return [];
    const markers = piecesOf(obstacle, 'marker');
    return markers.slice(1).flatMap((marker, i) => {
      const before = markers[i];
      return before === undefined ? [] : [clearBetween(before, marker)];
    });
  },
});
