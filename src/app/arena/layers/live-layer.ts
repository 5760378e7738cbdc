import { visibleFindings } from '../../check/visible-findings.ts';
import { shownDimensions } from '../overlays/use-dimensions.ts';
import { paintDimensionNumbers } from '../painters/dimension-numbers.ts';
import { paintKept, paintPins, paintTapeEnd, paintTapeReading } from '../painters/kept-mark.ts';
import { paintObstacles } from '../painters/paint-obstacles.ts';
import { CHANGE_PAINTERS, LATER_PAINTERS, RIDE_PAINTERS } from './later-painters.ts';
import { paintLineOfTravel } from './line-of-travel.ts';
import { paintOverlay } from './overlay.ts';
import type { PictureLayer } from './picture.ts';
import type { Scene } from './scene.ts';
import { looseTapeEnd } from './tape-end.ts';

/**
 * What the eye follows: what a gesture has moved, the line with its gaps, names and findings, and what belongs to the
 * selection. It is the one canvas that is drawn at each pointer move.
 */
export const liveLayer: PictureLayer<Scene> = {
  inputs({ desk, moved, stillParts, view, compared, plan, theme, reach, hasPrints }) {
    const { survey, chosen, stage, gesture, guides, tape, tapeReading } = desk;
    const { camera, size, pointed, sweepStep } = view;
    return [
      ...[survey, visibleFindings(desk), chosen, stage, gesture !== null, moved, stillParts, guides, tape, tapeReading],
      ...[camera, size, pointed, sweepStep, theme, reach, hasPrints, plan, stage === 'change' ? compared : null],
      ...LATER_PAINTERS.map((part) => part.now()),
    ];
  },
  paint(context, scene) {
    const { desk, moved, view, theme, reach } = scene;
    const { survey } = desk;
    const eye = { camera: view.camera, theme };
    const { kept, labels } = shownDimensions(desk, view, reach);
    paintObstacles(context, { obstacles: survey.obstacles.filter(({ obstacle }) => moved.has(obstacle.id)) }, eye);
    paintLineOfTravel(context, scene, labels);
    RIDE_PAINTERS.now()?.paintWantedPrints(context, scene);
    paintOverlay(context, scene);
    if (desk.stage === 'set') paintPins(context, survey, eye);
    paintKept(context, kept, { ...eye, labels });
    // At rest the numbers are fields, which can be pressed.
    if (desk.gesture !== null) paintDimensionNumbers(context, labels, eye);
    if (desk.tapeReading !== null) paintTapeReading(context, desk.tapeReading, eye);
    const end = looseTapeEnd(desk);
    if (end !== undefined) paintTapeEnd(context, end, eye);
    CHANGE_PAINTERS.now()?.paintChange(context, scene);
  },
};
