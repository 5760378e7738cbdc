import { visibleFindings } from '../../check/visible-findings.ts';
import { type DimensionLabel, labelBox } from '../overlays/dimension-places.ts';
import { arenaLabels } from '../painters/arena-labels.ts';
import { badgeBoxes } from '../painters/badges.ts';
import { paintEnds } from '../painters/ends.ts';
import { handleBoxes } from '../painters/handles.ts';
import { tapeReadingPlate } from '../painters/kept-mark.ts';
import { paintLabels } from '../painters/labels.ts';
import { paintLetters } from '../painters/paint-letters.ts';
import { paintPlaces } from '../painters/paint-places.ts';
import { paintTravel } from '../painters/paint-travel.ts';
import { CHANGE_PAINTERS } from './later-painters.ts';
import type { Scene } from './scene.ts';

/** The line but for what a gesture has left alone, its places, and the letters and names beside the obstacles, off all that has its own place. */
export function paintLineOfTravel(
  context: CanvasRenderingContext2D,
  { desk, stillParts, view, plan, theme, reach }: Scene,
  dimensions: readonly DimensionLabel[],
): void {
  const { survey, chosen, tapeReading } = desk;
  const { camera, size, pointed } = view;
  // A crew walks; the line of the horse would lie under its arrows.
  const hasLine = plan === null;
  const { ends, letters, labels, words } = arenaLabels(
    survey,
    { camera, size },
    {
      hasLine,
      badges: badgeBoxes(visibleFindings(desk), camera),
      kept: [
        ...handleBoxes({ survey, chosen }, { camera, reach: reach / camera.scale }),
        ...dimensions.map(labelBox),
        ...(plan === null ? [] : (CHANGE_PAINTERS.now()?.carryBoxes(plan.plan, view) ?? [])),
        ...(tapeReading === null ? [] : [tapeReadingPlate(tapeReading, camera)]),
      ],
    },
  );
  if (hasLine) {
    paintTravel(context, survey, { camera, theme, pointed, shown: (part) => !stillParts.has(part) });
    paintPlaces(context, { survey, words }, { camera, theme });
    paintEnds(context, ends, { theme });
  }
  paintLetters(context, letters, { camera, theme });
  paintLabels(context, labels, { theme, chosen });
}
