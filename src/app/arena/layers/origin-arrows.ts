import { comparedLayouts } from '../../change/compared.ts';
import { moveWords, originOf } from '../../change/origins.ts';
import { focusedKey } from '../../change/use-focused-key.ts';
import { screenBox } from '../painters/labels.ts';
import { type OriginArrow, originPlates, paintOrigin } from '../painters/paint-ghost.ts';
import type { Scene } from './scene.ts';
import { ghostIndex } from './still-layer.ts';

/** At Change an arrow from where the thing in focus lies in each compared layout to where it lies here. */
export function paintOrigins(context: CanvasRenderingContext2D, { desk, view, compared, plan, theme }: Scene): void {
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
