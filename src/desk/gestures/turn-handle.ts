import { pieceOf } from '../../core/course/ids.ts';
import { type Point, point } from '../../core/plane/point.ts';
import { toWorld } from '../../core/plane/pose.ts';
import { type Bounds, ringBounds, unionBounds } from '../../core/plane/ring.ts';
import type { Survey } from '../../core/survey.ts';
import { outlineCentre, outlines } from '../selection/outlines.ts';
import type { Keys } from '../selection/selection.ts';

/** The handle that turns the selection, and the point it turns about. */
export interface TurnHandle {
  readonly about: Point;
  /** Where its stem leaves the outline. */
  readonly root: Point;
  readonly at: Point;
}

/** Length of the stem in pick radii: far enough from the outline to be picked on its own. */
const STEM = 2;

/**
 * The turn handle of what is chosen; null when nothing that can turn is. `pickRadius` is metres at the present zoom. It
 * stands on the side of the outline that has the most ground left inside the arena.
 */
export function turnHandle(
  state: { readonly survey: Survey; readonly chosen: Keys },
  pickRadius: number,
): TurnHandle | null {
  const drawn = outlines(state);
  const [first] = drawn;
  if (first === undefined) return null;
  const { arena } = state.survey.course;
  const stem = STEM * pickRadius;
  if (drawn.length > 1) {
    // Several pieces keep the constraints between them: there is no one turn for them all.
    if (drawn.some((each) => pieceOf(each.key) !== undefined)) return null;
    const box = drawn.map((each) => ringBounds(each.ring)).reduce<Bounds>(unionBounds, ringBounds(first.ring));
    const x = (box.minX + box.maxX) / 2;
    const about = point(x, (box.minY + box.maxY) / 2);
    const below = box.minY > arena.width - box.maxY;
    return below
      ? { about, root: point(x, box.minY), at: point(x, box.minY - stem) }
      : { about, root: point(x, box.maxY), at: point(x, box.maxY + stem) };
  }
  const { x, y } = outlineCentre(first);
  const middle = (first.box.minX + first.box.maxX) / 2;
  const sides = ([1, -1] as const).map((side) => {
    const rim = side === 1 ? first.box.maxY : first.box.minY;
    return {
      root: toWorld(first.frame, { x: middle, y: rim }),
      at: toWorld(first.frame, { x: middle, y: rim + side * stem }),
    };
  });
  const room = (at: Point) => Math.min(at.x, arena.length - at.x, at.y, arena.width - at.y);
  const [left, right] = sides;
  if (left === undefined || right === undefined) return null;
  const best = room(left.at) >= Math.min(0, room(right.at)) ? left : right;
  return { about: point(x, y), ...best };
}
