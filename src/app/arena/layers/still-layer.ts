import type { PlacedPiece } from '../../../core/course/placed.ts';
import { comparedLayouts } from '../../change/compared.ts';
import { ghostPieces } from '../../change/origins.ts';
import { type GhostIndex, paintGhost } from '../painters/paint-ghost.ts';
import { paintGround } from '../painters/paint-ground.ts';
import { paintObstacles } from '../painters/paint-obstacles.ts';
import type { PictureLayer } from './picture.ts';
import type { Scene } from './scene.ts';

/** The outlines under the shown layout, at Change: the compared layouts; with a change-over, what it takes from where it lies. */
function ghostsOf({ desk, compared, plan }: Scene): readonly (readonly PlacedPiece[])[] {
  if (desk.stage !== 'change') return [];
  if (plan !== null) return [plan.leaving];
  if (compared.mode !== 'ghost') return [];
  return comparedLayouts(desk.course, compared).map((layout) => ghostPieces(layout, desk.survey.layout));
}

/** The grid helps while something moves or is measured; at rest it would lie over the course. */
function hasGrid({ desk }: Scene): boolean {
  return desk.gesture !== null || desk.tape !== null;
}

/** The ground and what lies on it still: during a gesture the obstacles that it has not moved; at rest all of them. */
export const stillLayer: PictureLayer<Scene> = {
  inputs(scene) {
    const { desk, resting, moved, view, theme } = scene;
    return [resting, moved, desk.course.arena, view.camera, theme, hasGrid(scene), ...ghostsOf(scene)];
  },
  paint(context, scene) {
    const { resting, moved, theme } = scene;
    const { camera } = scene.view;
    const { arena, unit } = scene.desk.course;
    paintGround(context, { arena, unit, camera, theme, hasGrid: hasGrid(scene) });
    for (const [index, ghost] of ghostsOf(scene).entries()) {
      paintGhost(context, ghost, { camera, theme, index: ghostIndex(index) });
    }
    const obstacles = resting.obstacles.filter(({ obstacle }) => !moved.has(obstacle.id));
    paintObstacles(context, { obstacles }, { camera, theme });
  },
};

export function ghostIndex(index: number): GhostIndex {
  return index === 0 ? 0 : 1;
}
