import { ridePositionAt } from '../../../core/ride/playing.ts';
import { printNotesOf, printsOf } from '../../../core/survey-prints.ts';
import { feetAt } from '../../ride/feet.ts';
import { paintHorse } from '../painters/paint-horse.ts';
import { paintPrints } from '../painters/paint-prints.ts';
import type { PictureLayer } from './picture.ts';
import type { Scene } from './scene.ts';

/** The hoof prints of the go, where they are wanted and nothing is dragged. */
export function paintWantedPrints(context: CanvasRenderingContext2D, { desk, view, theme, hasPrints }: Scene): void {
  if (!hasPrints || desk.stage !== 'ride' || desk.gesture !== null) return;
  const { survey } = desk;
  const prints = { prints: printsOf(survey), notes: printNotesOf(survey), hoof: survey.horse.hoof.value };
  paintPrints(context, prints, { camera: view.camera, theme, size: view.size });
}

const NO_PRINTS = [] as const;

/** Whether the horse is shown: before playing only the line is, because the horse would cover the handle of the start. */
function isRiding({ desk, time }: Scene): boolean {
  return desk.stage === 'ride' && time > 0;
}

/** The horse that rides the go, on a canvas of its own. */
export const ridingHorse: PictureLayer<Scene> = {
  inputs(scene) {
    const { desk, time, view, theme } = scene;
    return isRiding(scene) ? [desk.survey, desk.gesture !== null, time, view.camera, theme] : [];
  },
  paint(context, scene) {
    const { desk, time, view, theme } = scene;
    const { survey } = desk;
    const riding = isRiding(scene) ? ridePositionAt(survey.line, time) : undefined;
    if (riding === undefined) return;
    const { pose } = riding;
    const { horse } = survey;
    // During a drag no prints are worked out.
    const prints = desk.gesture === null ? printsOf(survey) : NO_PRINTS;
    paintHorse(context, { pose, feet: feetAt(prints, time, { pose, horse }), horse }, { camera: view.camera, theme });
  },
};
