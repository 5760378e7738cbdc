import type { PlacedObstacle, PlacedPiece } from '../../course/placed.ts';
import type { Gait } from '../../horses/horse.ts';
import type { Survey } from '../../survey.ts';
import { clearanceBetween, type MeasuredSize, markersOf, middleOfPieces, sizeCheck } from '../findings/dimension.ts';

/** The markers, where some leg rides them in one of the gaits. */
function riddenMarkers(
  obstacle: PlacedObstacle,
  survey: Survey,
  isSo: (gait: Gait) => boolean,
): readonly PlacedPiece[] {
  const { id } = obstacle.obstacle;
  const rides = survey.layout.ride.legs.some((leg) => leg.obstacle === id && isSo(leg.gait));
  return rides ? markersOf(obstacle) : [];
}

function markerClearances(markers: readonly PlacedPiece[]): readonly MeasuredSize[] {
  return markers.slice(1).flatMap((marker, i) => {
    const before = markers[i];
    return before === undefined ? [] : [clearanceBetween(before, marker)];
  });
}

export const serpentineWalk = sizeCheck({
  id: 'serpentine-walk',
  says: 'The markers of a serpentine stand far enough apart to be walked.',
  because: 'Between markers that are too near, the horse cannot bend round one before it meets the next.',
  weight: 'must',
  limit: 'serpentine.walk',
  what: 'base to base, the room between two markers of',
  param: 'gap',
  onlyDeclared: true,
  sizes: (obstacle, survey) => markerClearances(riddenMarkers(obstacle, survey, (gait) => gait === 'walk')),
});

export const serpentineMarkers = sizeCheck({
  id: 'serpentine-markers',
  says: 'A serpentine has enough markers.',
  because: 'Round two or three there is no rhythm of bends to see.',
  weight: 'should',
  limit: 'serpentine.markers',
  what: 'the number of markers of',
  onlyDeclared: true,
  sizes(obstacle, survey) {
    const markers = riddenMarkers(obstacle, survey, (gait) => gait === 'walk');
    return markers.length === 0 ? [] : [{ value: markers.length, at: middleOfPieces(markers), keys: [] }];
  },
});

export const serpentineSpacing = sizeCheck({
  id: 'serpentine-spacing',
  says: 'The markers of a serpentine stand far enough apart to be jogged.',
  because: 'Between markers that are too near, the horse has no stride left to change its bend.',
  weight: 'must',
  limit: 'serpentine.jog',
  what: 'base to base, the room between two markers of',
  param: 'gap',
  onlyDeclared: true,
  sizes: (obstacle, survey) => markerClearances(riddenMarkers(obstacle, survey, (gait) => gait !== 'walk')),
});
