import type { ChangeOver } from '../../../core/change/change-over.ts';
import type { PlacedPiece } from '../../../core/course/placed.ts';
import type { Bounds } from '../../../core/plane/ring.ts';
import { comparedLayouts } from '../../change/compared.ts';
import { ghostPieces, moveWords, originOf } from '../../change/origins.ts';
import { focusedKey } from '../../change/use-focused-key.ts';
import { carryLabels } from '../painters/carry-marks.ts';
import { screenBox } from '../painters/labels.ts';
import { paintCarries } from '../painters/paint-carries.ts';
import { type GhostIndex, type OriginArrow, originPlates, paintGhost, paintOrigin } from '../painters/paint-ghost.ts';
import type { Scene } from './scene.ts';

/** The outlines under the shown layout, at Change: the compared layouts; with a change-over, what it takes from where it lies. */
export function ghostsOf({ desk, compared, plan }: Scene): readonly (readonly PlacedPiece[])[] {
  if (desk.stage !== 'change') return [];
  if (plan !== null) return [plan.leaving];
  if (compared.mode !== 'ghost') return [];
  return comparedLayouts(desk.course, compared).map((layout) => ghostPieces(layout, desk.survey.layout));
}

export function paintGhosts(context: CanvasRenderingContext2D, scene: Scene): void {
  const { theme, view } = scene;
  for (const [index, ghost] of ghostsOf(scene).entries()) {
    paintGhost(context, ghost, { camera: view.camera, theme, index: ghostIndex(index) });
  }
}

function ghostIndex(index: number): GhostIndex {
  return index === 0 ? 0 : 1;
}

/** The boxes on the screen that the labels of a change-over take. */
export function carryBoxes(plan: ChangeOver, { camera, size }: Scene['view']): readonly Bounds[] {
  return carryLabels(plan, camera, size, null).map(({ box }) => box);
}

/** The arrow of the thing in focus, or the carries of the change-over that is shown. */
export function paintChange(context: CanvasRenderingContext2D, scene: Scene): void {
  paintOrigins(context, scene);
  const { plan, compared, theme, view } = scene;
  if (plan === null) return;
  const { camera, size } = view;
  paintCarries(context, plan.plan, { camera, theme, size, focused: compared.focusedCarry });
}

/** At Change an arrow from where the thing in focus lies in each compared layout to where it lies here. */
function paintOrigins(context: CanvasRenderingContext2D, { desk, view, compared, plan, theme }: Scene): void {
  const { course, survey } = desk;
  const key = focusedKey(compared, desk.chosen);
  if (desk.stage !== 'change' || compared.mode !== 'ghost' || key === null || plan !== null) return;
  const arrows = comparedLayouts(course, compared).flatMap((layout, index): readonly OriginArrow[] => {
    const origin = originOf(layout, survey.layout, key);
    if (origin?.kind !== 'moved') return [];
    const { from, to } = origin;
    return [{ from, to, words: moveWords(origin, course), index: ghostIndex(index) }];
  });
  if (arrows.length === 0) return;
  const { camera, size } = view;
  const kept = survey.obstacles.map(({ bounds }) => screenBox(bounds, camera));
  const plates = originPlates(arrows, { camera, size, kept });
  for (const [index, arrow] of arrows.entries()) {
    const plate = plates[index];
    if (plate !== undefined) paintOrigin(context, arrow, { camera, theme, plate });
  }
}
