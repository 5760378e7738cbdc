import { type Bounds, boundsIntersect } from '../../../core/plane/ring.ts';
import type { Survey } from '../../../core/survey.ts';
import { arenaFurniture, type Camera, furnitureBounds, type ScreenSize } from '../camera.ts';
import { createCrowd } from './crowd.ts';
import { type EndPlace, endBoxes, endPlaces } from './ends.ts';
import { labelForms, type ObstacleLabel, screenBox } from './labels.ts';
import { type LetterPlace, letterPlaces } from './paint-letters.ts';
import { type PlaceWords, wordForms, wordPlaces } from './paint-places.ts';
import { wallBoxes, wayInBox } from './rail.ts';
import { rulerMarks } from './rulers.ts';
import { lineDots, pieceDots } from './samples.ts';

/** All words and numbers that stand beside something in the arena, each off the others. */
export interface ArenaLabels {
  readonly ends: readonly EndPlace[];
  readonly letters: readonly LetterPlace[];
  readonly labels: readonly ObstacleLabel[];
  readonly words: readonly PlaceWords[];
}

/**
 * Where the words and numbers stand, the most wanted first: start and end, letters, obstacles, then changes of gait.
 * `badges`, the walls, the numbers along them, the buttons and what is `kept` are never covered; the line and the poles
 * as little as can be, and by the words of changes not at all. What finds no room is said shorter, then not at all.
 */
export function arenaLabels(
  survey: Survey,
  { camera, size }: { readonly camera: Camera; readonly size: ScreenSize },
  {
    badges,
    kept,
    hasLine,
  }: { readonly badges: readonly Bounds[]; readonly kept: readonly Bounds[]; readonly hasLine: boolean },
): ArenaLabels {
  const { arena, unit } = survey.course;
  const ends = hasLine ? endPlaces(survey, camera, badges) : [];
  const letters = letterPlaces(survey, camera, [...badges, ...endBoxes(ends)]);
  const taken = [
    ...badges,
    ...kept,
    ...endBoxes(ends),
    ...letters.map(({ box }) => box),
    ...wallBoxes(arena, camera),
    wayInBox(arena, camera),
    ...rulerMarks(arena, unit, camera).map(({ box }) => box),
    furnitureBounds(arenaFurniture(arena, size), size),
  ];
  const room = { minX: 2, minY: 2, maxX: size.width - 2, maxY: size.height - 2 };
  const places = hasLine ? wordPlaces(survey, camera) : [];
  const dots = [
    ...(hasLine ? lineDots(survey, camera) : []),
    ...pieceDots(survey, camera),
    ...places.flatMap(({ tick }) => tick),
  ];
  const crowd = createCrowd(room, { taken, dots });
  const boxes = survey.obstacles.map(({ bounds }) => screenBox(bounds, camera));
  const labels = survey.obstacles.flatMap((placed, i) => {
    const box = boxes[i];
    // What is out of the picture is not labelled at its edge.
    if (box === undefined || !boundsIntersect(box, room, 0)) return [];
    return crowd.put(labelForms(placed, survey, { box, boxes })) ?? [];
  });
  const words = places.flatMap((place) => crowd.put(wordForms(place), 0) ?? []);
  return { ends, letters, labels, words };
}
