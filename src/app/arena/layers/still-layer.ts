import { paintGround } from '../painters/paint-ground.ts';
import { paintObstacles } from '../painters/paint-obstacles.ts';
import { paintTravel } from '../painters/paint-travel.ts';
import { CHANGE_PAINTERS } from './later-painters.ts';
import type { PictureLayer } from './picture.ts';
import type { Scene } from './scene.ts';

/** The grid helps while something moves or is measured; at rest it would lie over the course. */
function hasGrid({ desk }: Scene): boolean {
  return desk.gesture !== null || desk.tape !== null;
}

/**
 * The ground and what lies on it still: during a gesture the obstacles and the parts of the line that it has not changed;
 * at rest all obstacles.
 */
export const stillLayer: PictureLayer<Scene> = {
  inputs(scene) {
    const { desk, resting, moved, stillParts, view, plan, theme } = scene;
    const ground = [desk.course.arena, view.camera, theme, hasGrid(scene)];
    return [resting, moved, stillParts, plan === null, ...ground, ...(CHANGE_PAINTERS.now()?.ghostsOf(scene) ?? [])];
  },
  paint(context, scene) {
    const { resting, moved, stillParts, plan, theme } = scene;
    const { camera } = scene.view;
    const { arena, unit } = scene.desk.course;
    paintGround(context, { arena, unit, camera, theme, hasGrid: hasGrid(scene) });
    CHANGE_PAINTERS.now()?.paintGhosts(context, scene);
    const obstacles = resting.obstacles.filter(({ obstacle }) => !moved.has(obstacle.id));
    paintObstacles(context, { obstacles }, { camera, theme });
    if (plan !== null || stillParts.size === 0) return;
    paintTravel(context, resting, { camera, theme, pointed: null, shown: (part) => stillParts.has(part) });
  },
};
