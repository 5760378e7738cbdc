import { visibleFindings } from '../../check/visible-findings.ts';
import { type DimensionLabel, labelBox } from '../overlays/dimension-places.ts';
import { badgeBoxes } from '../painters/badges.ts';
import { carryLabels } from '../painters/carry-marks.ts';
import { handleBoxes } from '../painters/handles.ts';
import { tapeReadingPlate } from '../painters/kept-mark.ts';
import { paintLabels } from '../painters/labels.ts';
import { letterPlaces, paintLetters } from '../painters/paint-letters.ts';
import { paintPlaces, placeWords } from '../painters/paint-places.ts';
import { endBoxes, paintTravel } from '../painters/paint-travel.ts';
import type { Scene } from './scene.ts';

/** The line with its places, and the letters and names beside the obstacles, off all that has its own place. */
export function paintLineOfTravel(
  context: CanvasRenderingContext2D,
  { desk, view, plan, theme, reach }: Scene,
  dimensions: readonly DimensionLabel[],
): void {
  const { survey, chosen, tapeReading } = desk;
  const { camera, size, pointed } = view;
  const ends = endBoxes(survey, camera);
  // A crew walks; the line of the horse would lie under its arrows.
  const words = plan === null ? placeWords(survey, camera) : [];
  if (plan === null) {
    paintTravel(context, survey, { camera, theme, pointed });
    paintPlaces(context, { survey, words }, { camera, theme });
  }
  const letters = letterPlaces(survey, camera, [...ends, ...words.map(({ box }) => box)]);
  paintLetters(context, letters, { camera, theme });
  const kept = [
    ...letters.map(({ box }) => box),
    ...badgeBoxes(visibleFindings(desk), camera),
    ...ends,
    ...words.map(({ box }) => box),
    ...handleBoxes({ survey, chosen }, { camera, reach: reach / camera.scale }),
    ...dimensions.map(labelBox),
    ...(plan === null ? [] : carryLabels(plan.plan, camera, size, null).map(({ box }) => box)),
    ...(tapeReading === null ? [] : [tapeReadingPlate(tapeReading, camera)]),
  ];
  paintLabels(context, survey, { camera, theme, size, chosen, kept });
}
