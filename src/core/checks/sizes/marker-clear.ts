import { clearanceBetween, markersOf, polesOf, sizeCheck } from '../findings/dimension.ts';

export const markerClearance = sizeCheck({
  id: 'marker-clear',
  says: 'The poles of a spoke keep clear of the marker in the middle.',
  because: 'The marker is knocked over when a pole is hit, and the line is pushed inwards.',
  weight: 'note',
  limit: 'marker.clear',
  what: 'the room between marker and pole in',
  param: 'clear',
  onlyDeclared: true,
  sizes(obstacle) {
    const [marker] = markersOf(obstacle);
    return marker === undefined ? [] : polesOf(obstacle).map((pole) => clearanceBetween(marker, pole));
  },
});
