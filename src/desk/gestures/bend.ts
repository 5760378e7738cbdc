import { type Course, currentLayout, type Leg } from '../../core/course/course.ts';
import { changeLeg } from '../../core/course/edit-ride.ts';
import { pathPoints } from '../../core/plane/path.ts';
import { distance, type Point, point } from '../../core/plane/point.ts';
import type { Pose } from '../../core/plane/pose.ts';
import { segmentPointDistance } from '../../core/plane/segment.ts';
import { type Survey, survey as surveyOf } from '../../core/survey.ts';
import { labels, messages } from '../../words/desk.ts';
import type { DeskState } from '../desk.ts';
import type { PointerInput } from '../input.ts';
import { nameOf } from '../names.ts';
import { placeSentences } from '../placing/wall-distances.ts';
import { type BendKey, bendIn, bendKey, RIDE_START } from '../selection/selection.ts';
import type { Gesture } from './gesture.ts';
import { isRideEnd, moveRideEnd, shownRideEnds } from './ride-ends.ts';

/** Step of the samples along the line, metres: finer than a pointer. */
const STEP = 0.25;

function legOf(course: Course, id: string): Leg | undefined {
  return currentLayout(course).ride.legs.find((leg) => leg.id === id);
}

/** The bend, or the start of the go, within reach; null for none. */
export function ridePointAt(survey: Survey, at: Point, pickRadius: number): string | null {
  const { legs, start } = survey.layout.ride;
  const points = legs.flatMap((leg) => leg.bends.map((bend, index) => ({ key: bendKey(leg.id, index), at: bend })));
  const near = [...points, { key: RIDE_START, at: point(start.x, start.y) }]
    .map((each) => ({ key: each.key, off: distance(each.at, at) }))
    .filter((each) => each.off <= pickRadius)
    .sort((a, b) => a.off - b.off);
  return near[0]?.key ?? null;
}

/** How far along the samples the place nearest to the point is, in samples. */
function nearestStep(samples: readonly Point[], at: Point): { readonly step: number; readonly off: number } {
  let best = { step: 0, off: Number.POSITIVE_INFINITY };
  samples.forEach((a, index) => {
    const b = samples[index + 1];
    if (b === undefined) return;
    const off = segmentPointDistance([a, b], at);
    if (off < best.off) best = { step: index, off };
  });
  return best;
}

/** Where the line on the way to an obstacle passes the point within reach, as the bend it would become. */
export function newBendAt(survey: Survey, at: Point, pickRadius: number): BendKey | null {
  let best: (BendKey & { readonly off: number }) | null = null;
  for (const [index, leg] of survey.layout.ride.legs.entries()) {
    const samples = approachSamples(survey, index);
    const { step, off } = nearestStep(samples, at);
    if (off > (best?.off ?? pickRadius)) continue;
    const before = leg.bends.filter((bend) => nearestStep(samples, bend).step < step).length;
    best = { leg: leg.id, index: before, off };
  }
  return best;
}

/** The way to a leg's obstacle as points. */
export function approachSamples(survey: Survey, leg: number): readonly Point[] {
  return survey.line.elements
    .filter((element) => element.leg === leg && element.part === 'approach')
    .flatMap((element) => pathPoints(element.path, STEP));
}

/** A bend put into a leg's approach, ahead of the one that has its index now. */
export function addBend(course: Course, { leg, index }: BendKey, at: Point): Course {
  const bends = legOf(course, leg)?.bends ?? [];
  return changeLeg(course, leg, { bends: [...bends.slice(0, index), point(at.x, at.y), ...bends.slice(index)] });
}

function moveBend(course: Course, { leg, index }: BendKey, at: Point): Course {
  const bends = legOf(course, leg)?.bends ?? [];
  return changeLeg(course, leg, { bends: bends.map((bend, each) => (each === index ? point(at.x, at.y) : bend)) });
}

export function removeBend(course: Course, { leg, index }: BendKey): Course {
  const bends = legOf(course, leg)?.bends ?? [];
  return changeLeg(course, leg, { bends: bends.filter((_, each) => each !== index) });
}

/** Where the point that a ride key names lies; an end that nobody set is where the line ends. */
export function ridePoint(course: Course, key: string): Point | null {
  const bend = bendIn(key);
  if (bend !== null) return legOf(course, bend.leg)?.bends[bend.index] ?? null;
  const end = isRideEnd(key) ? shownRideEnds(surveyOf(course)).find((each) => each.key === key) : undefined;
  return end === undefined ? null : point(end.at.x, end.at.y);
}

/** The course with the bend or the end of the go that a key names at a point. */
export function moveRidePoint(course: Course, key: string, at: Point): Course {
  const bend = bendIn(key);
  if (bend !== null) return moveBend(course, bend, at);
  const pose = ridePose(course, key);
  return pose === undefined || !isRideEnd(key) ? course : moveRideEnd(course, key, { ...pose, x: at.x, y: at.y });
}

/** The same as a pose: the ends of the go have a heading, a bend has none. */
export function ridePose(course: Course, key: string): Pose | undefined {
  if (isRideEnd(key)) return shownRideEnds(surveyOf(course)).find((each) => each.key === key)?.at;
  const at = ridePoint(course, key);
  return at === null ? undefined : { x: at.x, y: at.y, angle: 0 };
}

/** The course with the bend or the end of the go at a pose; of a bend only the place counts. */
export function poseRidePoint(course: Course, key: string, pose: Pose): Course {
  return isRideEnd(key) ? moveRideEnd(course, key, pose) : moveRidePoint(course, key, pose);
}

/** Drags a bend that exists, or makes a new one out of the line. */
export function bendGesture(down: PointerInput, state: DeskState, target: string | BendKey): Gesture {
  const { course } = state;
  const fresh = typeof target !== 'string';
  const key = fresh ? bendKey(target.leg, target.index) : target;
  const base = fresh ? addBend(course, target, down.at) : course;
  const origin = ridePoint(base, key) ?? down.at;
  const end = isRideEnd(key) ? nameOf(state.survey, key) : null;

  const showing = (preview: Course | null): Gesture => ({
    course: preview,
    chosen: preview === null && fresh ? state.chosen : [key],
    guides: [],
    doing: end === null ? messages.bending() : messages.moving(end),
    moved: (input) => {
      const asked = point(origin.x + input.at.x - down.at.x, origin.y + input.at.y - down.at.y);
      return showing(moveRidePoint(base, key, asked));
    },
    commit: () => ({
      ...(preview === null ? {} : { course: preview }),
      chosen: [key],
      label: end === null ? labels.bend() : labels.move(end),
      said: end === null ? messages.bent() : messages.moved(end, placeSentences(preview ?? course, [key], course)),
    }),
  });
  return showing(null);
}
