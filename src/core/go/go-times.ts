import type { ClassEntry, Course, Day, DayBreak, Entry } from '../course/course.ts';
import { dayClassOf } from '../course/day-class.ts';
import { ridingEntries } from '../course/entry-count.ts';
import { printDuration } from '../measure/duration.ts';
import type { Seconds } from '../measure/quantity.ts';
import { printTimeOfDay } from '../measure/time-of-day.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import { USUAL_CLASS } from '../ride/class-clock.ts';
import type { Survey } from '../survey.ts';

interface Span {
  readonly from: Seconds;
  readonly to: Seconds;
}

/** One go. `turn` counts those who ride, 1 first. */
export interface GoTurn extends Span {
  readonly kind: 'go';
  readonly turn: number;
  readonly entry: Entry;
}

/** What happens in the ring, one after the other. */
export type GoRow =
  | GoTurn
  | (Span & { readonly kind: 'drag' })
  | (Span & { readonly kind: 'break'; readonly title: string });

/** When each entry of a class goes, estimated. */
export interface GoTimes {
  /** Whether times are seconds of the day; else they count from the first go. */
  readonly counts: 'time-of-day' | 'from-start';
  readonly rows: readonly GoRow[];
  /** Those who do not ride, in the order of the list. */
  readonly scratched: readonly Entry[];
  /** From the first go to the end of the last. */
  readonly from: Seconds;
  readonly to: Seconds;
  /** How much later the last go is than without lateness. */
  readonly late: Seconds;
}

/** What the times of a class are worked out from. */
export interface GoPlan {
  readonly list: readonly Entry[];
  /** One go. */
  readonly go: Seconds;
  readonly class: Pick<ClassEntry, 'changeover' | 'dragEvery' | 'drag'>;
  /** Seconds of the day at which the class may begin; null while it is not known. */
  readonly starts: Seconds | null;
  /** Of the day. */
  readonly breaks: readonly Pick<DayBreak, 'title' | 'from' | 'length'>[];
}

type Pause = Span & { readonly kind: 'break'; readonly title: string };

/** The breaks that are on when a class would begin, one after the other, and when it begins then. */
function breaksBefore(breaks: GoPlan['breaks'], starts: Seconds): { pauses: readonly Pause[]; begins: Seconds } {
  const pauses: Pause[] = [];
  let begins = starts;
  for (const { title, from, length } of breaks) {
    if (from > begins || from + length <= begins) continue;
    pauses.push({ kind: 'break', title, from, to: from + length });
    begins = from + length;
  }
  return { pauses, begins };
}

/** The breaks that are due while a class is ridden: they begin when it has ended, as everywhere in a day. */
function breaksAfter(breaks: GoPlan['breaks'], begins: Seconds, ends: Seconds): readonly Pause[] {
  const pauses: Pause[] = [];
  let over = ends;
  for (const { title, from, length } of breaks) {
    if (from <= begins || from > over) continue;
    const at = Math.max(over, from);
    pauses.push({ kind: 'break', title, from: at, to: at + length });
    over = at + length;
  }
  return pauses;
}

/**
 * When each goes: one go after the other with the change-over between, a drag after so many goes but not after the last. An
 * entry that is late moves itself and all after it; one that is scratched takes no time. Breaks are those of the day.
 */
export function goTimes({ list, go, class: of, starts, breaks }: GoPlan): GoTimes {
  const { changeover, dragEvery, drag } = { ...USUAL_CLASS, ...of };
  const sorted = breaks.toSorted((a, b) => a.from - b.from);
  const before = starts === null ? { pauses: [], begins: 0 } : breaksBefore(sorted, starts);
  const riding = ridingEntries(list);
  const rows: GoRow[] = [...before.pauses];
  let now = before.begins;
  let late = 0;
  for (const [i, entry] of riding.entries()) {
    if (i > 0 && dragEvery > 0 && i % dragEvery === 0) {
      rows.push({ kind: 'drag', from: now, to: now + drag });
      now += drag;
    }
    const from = now + (i > 0 ? changeover : 0) + (entry.late ?? 0);
    late += entry.late ?? 0;
    now = from + go;
    rows.push({ kind: 'go', turn: i + 1, entry, from, to: now });
  }
  const after = starts === null || riding.length === 0 ? [] : breaksAfter(sorted, before.begins, now);
  return {
    counts: starts === null ? 'from-start' : 'time-of-day',
    rows: [...rows, ...after],
    scratched: list.filter((entry) => entry.scratched === true),
    from: before.begins,
    to: now,
    late,
  };
}

/** When the first go may begin: as typed for the class, or as the day has it; null while neither says. */
export function startOf(course: Course): Seconds | null {
  return course.class.starts ?? dayClassOf(course)?.startsAt ?? null;
}

/** Who rides; where only their number is known, as many without a name. */
export function listOf({ list, entries }: ClassEntry): readonly Entry[] {
  const unnamed = (i: number): Entry => ({ id: `entry-${i + 1}`, number: '', rider: '', horse: '' });
  return list ?? Array.from({ length: entries }, (_, i) => unnamed(i));
}

/** When each entry of a survey's class goes; `day` where the survey is of one layout alone and does not know it. */
export const goTimesOf = memoizeByIdentity(({ course, classClock }: Survey, day?: Day): GoTimes => {
  const known = day ?? (dayClassOf(course) === undefined ? undefined : course.day);
  return goTimes({
    list: listOf(course.class),
    go: classClock.go,
    class: course.class,
    starts: startOf(course),
    breaks: known?.breaks ?? [],
  });
});

/** A time of these, as people read it: "9:05 am", or "12 min 30 s" after the first go. */
export function goTimeWords({ counts }: Pick<GoTimes, 'counts'>, time: Seconds): string {
  return counts === 'time-of-day' ? printTimeOfDay(time) : `+ ${printDuration(time)}`;
}

/** Stands wherever the times are shown. */
export const GO_CAUTION = 'Times are estimates. Be at the gate early: entries may scratch and goes may be shorter.';
