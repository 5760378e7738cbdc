import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Point } from '../plane/point.ts';
import type { Carry, ChangeOver, Stop } from './change-over.ts';

/** What is drawn of a carry: `from` is missing for what comes from the truck, `to` for what goes there. On the ground. */
export interface CarryArrow {
  readonly number: number;
  /** The number; `+` before it comes from the truck, `−` goes to it. */
  readonly text: string;
  readonly from?: Point;
  readonly to?: Point;
  /** It waits for a later pass. */
  readonly isLater: boolean;
}

function groundPlace(stop: Stop): Point | undefined {
  if (stop.kind === 'truck') return undefined;
  return stop.kind === 'ground' ? stop.load.pose : stop.at;
}

function carryArrow({ number, from, to, pass }: Carry): CarryArrow {
  const [start, end] = [groundPlace(from), groundPlace(to)];
  const sign = start === undefined ? '+' : end === undefined ? '−' : '';
  return {
    number,
    text: `${sign}${number}`,
    isLater: pass > 1,
    ...(start === undefined ? {} : { from: start }),
    ...(end === undefined ? {} : { to: end }),
  };
}

/** The arrows of all carries, by number; cached by identity. */
export const carryArrows = memoizeByIdentity((plan: ChangeOver): readonly CarryArrow[] => plan.carries.map(carryArrow));
