import { FOOT } from '../../core/measure/quantity.ts';
import type { DeskState } from '../desk.ts';
import type { SnapDoing } from '../instruments.ts';
import type { SnapContext, SnapRange, SnapResult, SnapSubject } from './snap.ts';

/** A snap never carries anything further than this on the ground, however far away the view is: 3 ft. */
export const MOST_SNAP = 3 * FOOT;

const NO_SNAP: SnapResult = { x: 0, y: 0, angle: 0, guides: [] };

/** The snaps that hold; none where snapping is off, and for as long as there are no instruments. */
export function snapped(
  { instruments }: Pick<DeskState, 'instruments'>,
  moving: SnapSubject,
  options: {
    readonly ground: SnapContext;
    readonly doing: SnapDoing;
    readonly reach: SnapRange;
    readonly isOff: boolean;
  },
): SnapResult {
  const { ground, doing, reach, isOff } = options;
  return isOff ? NO_SNAP : (instruments?.snap(moving, ground, { doing, reach }) ?? NO_SNAP);
}
