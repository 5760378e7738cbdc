import { paintGround } from '../painters/paint-ground.ts';
import type { PictureLayer } from './picture.ts';
import type { Scene } from './scene.ts';

/** The grid helps while something moves or is measured; at rest it would lie over the course. */
function hasGrid({ desk }: Scene): boolean {
  return desk.gesture !== null || desk.tape !== null;
}

/** The ground with its rail. */
export const groundLayer: PictureLayer<Scene> = {
  inputs: (scene) => [scene.desk.course.arena, scene.desk.course.unit, scene.view.camera, scene.theme, hasGrid(scene)],
  paint(context, scene) {
    const { arena, unit } = scene.desk.course;
    const { view, theme } = scene;
    paintGround(context, { arena, unit, camera: view.camera, theme, hasGrid: hasGrid(scene) });
  },
};
