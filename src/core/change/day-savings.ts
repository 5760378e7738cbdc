/** What a day takes and where time can be saved: each proposal with the minutes by which the day ends earlier. */
import type { Course } from '../course/course.ts';
import { changeClass, orderClasses } from '../course/edit-day.ts';
import { printDuration } from '../measure/duration.ts';
import type { Seconds } from '../measure/quantity.ts';
import { USUAL_CLASS } from '../ride/class-clock.ts';
import { bestOrder, type DayOrder, givenOrder } from './day-order.ts';
import { type DayProblem, dayProblem, type LayoutChange } from './day-problem.ts';
import type { DayTimes } from './day-times.ts';
import { sharedLayouts } from './shared-layouts.ts';
import { slowestObstacles } from './slow-obstacles.ts';

/** What the time of a day goes into; together the whole of it. */
export interface DayParts {
  readonly riding: Seconds;
  /** Between goes. */
  readonly pauses: Seconds;
  readonly dragging: Seconds;
  /** Setting out and taking down with it. */
  readonly changing: Seconds;
  /** Breaks, as far as nothing is changed over meanwhile. */
  readonly breaks: Seconds;
  /** Waiting for a fixed start, or for riders to rest. */
  readonly idle: Seconds;
}

/** Something that would make the day shorter. */
export interface DaySaving {
  readonly kind: 'order' | 'crew' | 'shared' | 'obstacle' | 'pauses';
  readonly says: string;
  /** By how much the day ends earlier. */
  readonly saves: Seconds;
  /** The course with it done; absent where it is not in the course. */
  edit?(course: Course): Course;
}

/** A day as it is, the better order, and what else would save time. */
export interface DaySavings {
  readonly given: DayOrder;
  readonly best: DayOrder;
  readonly total: Seconds;
  readonly parts: DayParts;
  /** What saves most first; each beside the best order, not beside the others. */
  readonly savings: readonly DaySaving[];
}

/** How change-overs are worked out: by the crew of the course, and by one with more people, where there can be one. */
export interface DayCrews {
  readonly crew: LayoutChange;
  readonly more?: { readonly people: number; readonly change: LayoutChange };
}

/** Less is not told. */
const LEAST: Seconds = 60;
/** By how much a gate steward who calls riders up early shortens each pause, seconds, and what stays of it. Estimates. */
const SHORTER_PAUSE: Seconds = 10;
const SHORTEST_PAUSE: Seconds = 15;
/** For more classes the order is kept while proposals are tried. */
const MOST_REORDERED = 9;

/** The parts of a day's time in an order of its classes. */
export function dayParts({ tasks }: DayProblem, times: DayTimes): DayParts {
  const sum = (part: 'riding' | 'dragging' | 'seconds'): Seconds => tasks.reduce((all, task) => all + task[part], 0);
  const [riding, dragging] = [sum('riding'), sum('dragging')];
  const pauses = sum('seconds') - riding - dragging;
  const idle = times.classes.reduce((all, each) => all + each.idle, 0);
  const breaks = times.finish - times.starts - sum('seconds') - times.changing - idle;
  return { riding, pauses, dragging, changing: times.changing, breaks, idle };
}

/** When the day ends in its best order, or in its own where there are many classes. */
function finishOf(course: Course, change: LayoutChange): Seconds {
  const problem = dayProblem(course, change);
  if (problem === undefined) throw new Error('finishOf: the course has no day');
  const order = problem.tasks.length <= MOST_REORDERED ? bestOrder(problem) : givenOrder(problem);
  return order.cost.finish;
}

function pausesShortened(course: Course): Course {
  return (course.day?.classes ?? []).reduce((now, { id, changeover }) => {
    const pause = changeover ?? course.class.changeover ?? USUAL_CLASS.changeover;
    const shorter = Math.max(Math.min(pause, SHORTEST_PAUSE), pause - SHORTER_PAUSE);
    return shorter < pause ? changeClass(now, id, { changeover: shorter }) : now;
  }, course);
}

function orderSaving(given: DayOrder, best: DayOrder): readonly DaySaving[] {
  if (best.times.order.every((id, i) => id === given.times.order[i])) return [];
  const saves = given.cost.finish - best.cost.finish;
  const mends = given.cost.broken - best.cost.broken;
  if (saves < LEAST && mends <= 0) return [];
  const more = mends > 0 ? `; it keeps ${mends} more of what is set` : '';
  const says = `Another order of the classes${more}.`;
  return [{ kind: 'order', says, saves, edit: (course) => orderClasses(course, best.times.order) }];
}

/** The proposals beside another order, each tried on a copy of the course. */
function otherSavings(course: Course, { crew, more }: DayCrews): readonly DaySaving[] {
  const finish = finishOf(course, crew);
  const tried = (kind: DaySaving['kind'], says: string, edit: (of: Course) => Course): DaySaving => {
    return { kind, says, saves: finish - finishOf(edit(course), crew), edit };
  };
  const largerCrew: readonly DaySaving[] =
    more === undefined
      ? []
      : [
          {
            kind: 'crew',
            says: `A crew of ${more.people} to change over.`,
            saves: finish - finishOf(course, more.change),
          },
        ];
  return [
    ...largerCrew,
    ...sharedLayouts(course).map(({ says, edit }) => tried('shared', says, edit)),
    ...slowestObstacles(course).map(({ says, edit }) => tried('obstacle', says, edit)),
    tried(
      'pauses',
      `Riders called to the gate early, so that ${printDuration(SHORTER_PAUSE)} less lies between goes in every class.`,
      pausesShortened,
    ),
  ];
}

/** What the day of a course takes, in its order and in the best, and what would save time; undefined where it has none. */
export function daySavings(course: Course, crews: DayCrews): DaySavings | undefined {
  const problem = dayProblem(course, crews.crew);
  if (problem === undefined) return undefined;
  const given = givenOrder(problem);
  const best = bestOrder(problem);
  const others = problem.tasks.length === 0 ? [] : otherSavings(course, crews);
  return {
    given,
    best,
    total: given.times.finish - given.times.starts,
    parts: dayParts(problem, given.times),
    savings: [
      ...orderSaving(given, best),
      ...others.filter(({ saves }) => saves >= LEAST).sort((a, b) => b.saves - a.saves),
    ],
  };
}
