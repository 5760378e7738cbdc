import { paintGround } from '../painters/paint-ground.ts';
import type { PictureLayer } from './picture.ts';
import type { Scene } from './scene.ts';

/** The ground with its rail. */
export const groundLayer: PictureLayer<Scene> = {
  inputs: ({ desk, view, theme }) => [desk.course.arena, desk.course.unit, view.camera, theme],
  paint(context, { desk, view, theme }) {
    const { arena, unit } = desk.course;
    paintGround(context, { arena, unit, camera: view.camera, theme });
  },
};
