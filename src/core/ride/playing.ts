import type { Metres, Seconds } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import { poseAt } from '../plane/path.ts';
import type { Pose } from '../plane/pose.ts';
import type { Line, LineElement } from './line.ts';

/** When each element begins, seconds from the start of the go. */
const startTimes = memoizeByIdentity((line: Line): ReadonlyMap<LineElement, Seconds> => {
  let total: Seconds = 0;
  const made = new Map<LineElement, Seconds>();
  for (const element of line.elements) {
    made.set(element, total);
    total += element.seconds;
  }
  return made;
});

/** The extra time of an element (a transition, settling) is spread over its first metres: this many. Estimate. */
const SLOW_LENGTH: Metres = 3;

/** Seconds after its beginning at which an element's place is reached, and the place after so many seconds. */
function timing({ length, seconds, moving }: LineElement) {
  const slow = Math.min(SLOW_LENGTH, length);
  const lost = seconds - moving;
  const rate = length > 0 ? moving / length : 0;
  const slowFor = lost + slow * rate;
  return {
    after: (at: Metres): Seconds => (at < slow ? (at / slow) * slowFor : slowFor + (at - slow) * rate),
    place: (gone: Seconds): Metres => {
      if (gone < slowFor) return (gone / slowFor) * slow;
      return rate > 0 ? Math.min(length, slow + (gone - slowFor) / rate) : length;
    },
  };
}

/**
 * The time at which the middle of the horse is at a distance along the line; `element` decides where two elements meet.
 */
export function secondsAt(line: Line, at: Metres, meant?: LineElement): Seconds {
  const element = meant ?? line.elements.findLast(({ from }) => from <= at) ?? line.elements[0];
  if (element === undefined) return 0;
  const inside = Math.min(element.length, Math.max(0, at - element.from));
  return (startTimes(line).get(element) ?? 0) + (element.length > 0 ? timing(element).after(inside) : 0);
}

/** Where the horse is in the middle of its go. */
export interface RidePosition {
  readonly element: LineElement;
  readonly at: Metres;
  /** The middle of the hoof base, and where the horse faces. */
  readonly pose: Pose;
}

/** Where the horse is after so many seconds, at its true speed; undefined where there is no line. */
export function ridePositionAt(line: Line, seconds: Seconds): RidePosition | undefined {
  const starts = startTimes(line);
  const element = line.elements.findLast((each) => (starts.get(each) ?? 0) <= seconds) ?? line.elements[0];
  if (element === undefined) return undefined;
  const gone = Math.max(0, seconds - (starts.get(element) ?? 0));
  const along = timing(element).place(gone);
  const here = poseAt(element.path, along);
  const turned = element.seconds > 0 ? Math.min(1, gone / element.seconds) * element.turn : element.turn;
  return { element, at: element.from + along, pose: { ...here, angle: here.angle + element.facing + turned } };
}
