import type { ClassEntry, Course, Day, DayBreak, DayClass, Layout } from '../course/course.ts';
import { dayClassOf } from '../course/day-class.ts';
import type { Seconds } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import { USUAL_CLASS } from '../ride/class-clock.ts';
import { layoutById, layoutSurvey } from './layout-survey.ts';

/** Seconds that a crew takes from one layout to the next; null is the empty arena. */
export type LayoutChange = (from: Layout | null, to: Layout | null) => Seconds;

/** What a rider needs between two classes that does not say: a quarter of an hour. Estimate. */
export const USUAL_REST: Seconds = 900;

/** One class as a stretch of time. */
export interface DayTask {
  readonly id: string;
  readonly layout: string;
  /** From the first go to the end of the last, with what lies between goes and the drags. */
  readonly seconds: Seconds;
  /** Of those: all goes, and all drags. */
  readonly riding: Seconds;
  readonly dragging: Seconds;
  /** When the ground is dragged, from the beginning of the class. */
  readonly drags: readonly { readonly from: Seconds; readonly to: Seconds }[];
  readonly startsAt?: Seconds;
  readonly judge?: string;
  readonly riders: readonly string[];
}

/** A day as times and what is fixed about them: all that an order of its classes is judged by. */
export interface DayProblem {
  readonly starts: Seconds;
  readonly tasks: readonly DayTask[];
  /** By their times. */
  readonly breaks: readonly DayBreak[];
  readonly rest: Seconds;
  /** Seconds from one layout to the next by id; null is the empty arena. */
  changeOver(from: string | null, to: string | null): Seconds;
}

type Whose = 'its-own' | 'of-another';

const entryOf = memoizeByIdentity((of: DayClass, own: ClassEntry, whose: Whose): ClassEntry => {
  const { title, level, entries, changeover, dragEvery, drag } = of;
  const { allotted: _, list: ownList, starts, drawn: _drawn, ...rest } = own;
  const isOwn = whose === 'its-own';
  const isOwnList = isOwn && ownList !== undefined;
  const { list, drawn } = isOwnList ? own : of;
  return {
    ...{ ...rest, title, level, entries },
    ...(list === undefined ? {} : { list }),
    ...(drawn === undefined ? {} : { drawn }),
    ...(isOwn && starts !== undefined ? { starts } : of.startsAt === undefined ? {} : { starts: of.startsAt }),
    ...(changeover === undefined ? {} : { changeover }),
    ...(dragEvery === undefined ? {} : { dragEvery }),
    ...(drag === undefined ? {} : { drag }),
  };
});

/** A class of the day as the class entry that its layout is surveyed with, with who rides it. */
export function classEntryOf(of: DayClass, course: Course): ClassEntry {
  return entryOf(of, course.class, dayClassOf(course) === of ? 'its-own' : 'of-another');
}

function taskOf(course: Course, of: DayClass): DayTask {
  const entry = classEntryOf(of, course);
  const { go, riding, drags, dragging, whole } = layoutSurvey(course, of.layout, entry).classClock;
  const { changeover, dragEvery, drag } = { ...USUAL_CLASS, ...entry };
  const { startsAt, judge = '' } = of;
  return {
    ...{ id: of.id, layout: of.layout, seconds: whole, riding, dragging },
    drags: Array.from({ length: drags }, (_, i) => {
      // After the goes of all rounds so far, with the pauses between them, and the drags before this one.
      const from = (i + 1) * dragEvery * (go + changeover) - changeover + i * drag;
      return { from, to: from + drag };
    }),
    ...(startsAt === undefined ? {} : { startsAt }),
    ...(judge.trim() === '' ? {} : { judge: judge.trim() }),
    riders: [...new Set((of.riders ?? []).map((rider) => rider.trim()).filter((rider) => rider !== ''))],
  };
}

/** The day of a course as times; undefined where it has none. `change` is asked once for each two layouts. */
export function dayProblem(course: Course, change: LayoutChange): (DayProblem & { readonly day: Day }) | undefined {
  const { day } = course;
  if (day === undefined) return undefined;
  const known = new Map<string, Seconds>();
  const layout = (id: string | null): Layout | null => (id === null ? null : layoutById(course, id));
  return {
    day,
    starts: day.starts,
    tasks: day.classes.map((each) => taskOf(course, each)),
    breaks: day.breaks.toSorted((a, b) => a.from - b.from),
    rest: day.restBetween ?? USUAL_REST,
    changeOver(from, to) {
      if (from === to) return 0;
      const key = `${from ?? ''} ${to ?? ''}`;
      const seconds = known.get(key) ?? change(layout(from), layout(to));
      known.set(key, seconds);
      return seconds;
    },
  };
}
