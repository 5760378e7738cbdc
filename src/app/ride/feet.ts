import type { Horse } from '../../core/horses/horse.ts';
import type { Seconds } from '../../core/measure/quantity.ts';
import { memoizeByIdentity } from '../../core/memo/by-identity.ts';
import { distance, type Point } from '../../core/plane/point.ts';
import { type Pose, toWorld } from '../../core/plane/pose.ts';
import { type Foot, footOffset, sideOf } from '../../core/ride/footfall.ts';
import type { HoofPrint } from '../../core/ride/hoof-print.ts';

const FEET: readonly Foot[] = ['LH', 'LF', 'RH', 'RF'];

/** A foot of the horse as the picture shows it. */
export interface FootPlace {
  readonly foot: Foot;
  readonly point: Point;
  readonly heading: number;
  /** Whether it bears on the ground. */
  readonly isDown: boolean;
}

/** How much of its stride a foot is on the ground, for the picture only. Estimates. */
const DOWN: Readonly<Record<HoofPrint['gait'], number>> = {
  ...{ walk: 0.62, jog: 0.48, lope: 0.4 },
  ...{ back: 0.62, 'side-pass': 0.5, turn: 0.5, halt: 0.62 },
};
/** A foot further than this from where it stands at rest is no foot of this stride, in wheelbases. */
const FAR = 1.1;

const sorted = memoizeByIdentity((prints: readonly HoofPrint[]): ReadonlyMap<Foot, readonly HoofPrint[]> => {
  const all = new Map<Foot, readonly HoofPrint[]>();
  for (const foot of FEET) {
    const own = prints.filter((print) => print.foot === foot);
    all.set(
      foot,
      own.toSorted((a, b) => a.time - b.time),
    );
  }
  return all;
});

/** The first that has not come down by then. */
function firstAfter(prints: readonly HoofPrint[], time: Seconds): number {
  let [low, high] = [0, prints.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((prints[middle]?.time ?? 0) <= time) low = middle + 1;
    else high = middle;
  }
  return low;
}

function atRest(foot: Foot, pose: Pose, horse: Horse): FootPlace {
  const local = { x: footOffset(foot, horse.wheelbase.value), y: (sideOf(foot) * horse.stance.value) / 2 };
  return { foot, point: toWorld(pose, local), heading: pose.angle, isDown: true };
}

/** Where the four feet are: on their last prints, or on the way to the next; under the body where it makes none. */
export function feetAt(
  prints: readonly HoofPrint[],
  time: Seconds,
  { pose, horse }: { readonly pose: Pose; readonly horse: Horse },
): readonly FootPlace[] {
  const all = sorted(prints);
  return FEET.map((foot) => {
    const rest = atRest(foot, pose, horse);
    const own = all.get(foot) ?? [];
    const next = firstAfter(own, time);
    const [from, to] = [own[next - 1], own[next]];
    if (from === undefined || to === undefined || to.time <= from.time) return rest;
    const gone = (time - from.time) / (to.time - from.time);
    const share = Math.max(0, (gone - DOWN[from.gait]) / (1 - DOWN[from.gait]));
    const smooth = share * share * (3 - 2 * share);
    const place = {
      x: from.point.x + (to.point.x - from.point.x) * smooth,
      y: from.point.y + (to.point.y - from.point.y) * smooth,
    };
    if (distance(place, rest.point) > FAR * horse.wheelbase.value) return rest;
    return { foot, point: place, heading: from.heading, isDown: share === 0 };
  });
}
