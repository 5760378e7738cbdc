import { RIDE_PAINTERS } from './later-painters.ts';
import type { PictureLayer } from './picture.ts';
import type { Scene } from './scene.ts';

/** The canvas of the horse that rides the go: empty until its painter has come. */
export const horseLayer: PictureLayer<Scene> = {
  inputs: (scene) => RIDE_PAINTERS.now()?.ridingHorse.inputs(scene) ?? [],
  paint: (context, scene) => RIDE_PAINTERS.now()?.ridingHorse.paint(context, scene),
};
