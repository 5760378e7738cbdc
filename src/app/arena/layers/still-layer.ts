import type { PlacedPiece } from '../../../core/course/placed.ts';
import { comparedLayouts } from '../../change/compared.ts';
import { ghostPieces } from '../../change/origins.ts';
import { type GhostIndex, paintGhost } from '../painters/paint-ghost.ts';
import { paintGround } from '../painters/paint-ground.ts';
import { paintObstacles } from '../painters/paint-obstacles.ts';
import { paintTravel } from '../painters/paint-travel.ts';
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

/**
 * The ground and what lies on it still: during a gesture the obstacles and the parts of the line that it has not changed;
 * at rest all obstacles.
 */
export const stillLayer: PictureLayer<Scene> = {
  inputs(scene) {
    const { desk, resting, moved, stillParts, view, plan, theme } = scene;
    const ground = [desk.course.arena, view.camera, theme, hasGrid(scene)];
    return [resting, moved, stillParts, plan === null, ...ground, ...ghostsOf(scene)];
  },
  paint(context, scene) {
    const { resting, moved, stillParts, plan, theme } = scene;
    const { camera } = scene.view;
    const { arena, unit } = scene.desk.course;
    paintGround(context, { arena, unit, camera, theme, hasGrid: hasGrid(scene) });
    for (const [index, ghost] of ghostsOf(scene).entries()) {
      paintGhost(context, ghost, { camera, theme, index: ghostIndex(index) });
    }
    const obstacles = resting.obstacles.filter(({ obstacle }) => !moved.has(obstacle.id));
    paintObstacles(context, { obstacles }, { camera, theme });
    if (plan !== null || stillParts.size === 0) return;
    paintTravel(context, resting, { camera, theme, pointed: null, shown: (part) => stillParts.has(part) });
  },
};

export function ghostIndex(index: number): GhostIndex {
  return index === 0 ? 0 : 1;
}
