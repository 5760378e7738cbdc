import { ridePositionAt } from '../../../core/ride/playing.ts';
import { printsOf } from '../../../core/survey.ts';
import { feetAt } from '../../ride/feet.ts';
import { paintHorse } from '../painters/paint-horse.ts';
import type { PictureLayer } from './picture.ts';
import type { Scene } from './scene.ts';

const NO_PRINTS = [] as const;

/** Whether the horse is shown: before playing only the line is, because the horse would cover the handle of the start. */
function isRiding({ desk, time }: Scene): boolean {
  return desk.stage === 'ride' && time > 0;
}

/** The horse that rides the go. */
export const horseLayer: PictureLayer<Scene> = {
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
