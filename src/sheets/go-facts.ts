/** What the sheets about the order of go have in common. */

import type { Entry } from '../core/course/course.ts';
import { entryCount, ridingEntries } from '../core/course/entry-count.ts';
import { type GoRow, type GoTimes, goTimesOf, goTimeWords } from '../core/go/go-times.ts';
import { printMinutes } from '../core/measure/duration.ts';
import type { Survey } from '../core/survey.ts';
import { counted } from '../core/text/sentence.ts';
import { LEVELS } from './title-block.ts';

/** Stands over both sheets: how many ride, when the first goes, and how long a go is. */
export function goFacts(of: Survey): readonly (readonly [string, string])[] {
  const times = goTimesOf(of);
  const { course, classClock } = of;
  const scratched = times.scratched.length;
  const entries = counted(entryCount(course.class), 'entry', 'entries');
  return [
    ['Level', LEVELS[course.class.level]],
    ['Goes', scratched === 0 ? entries : `${entries}, and ${scratched} scratched`],
    ...(times.counts === 'time-of-day' ? [['First go about', goTimeWords(times, times.from)] as const] : []),
    ['A go takes about', printMinutes(classClock.go)],
    ['All done about', goTimeWords(times, times.to)],
    ...(classClock.drags > 0 ? [['Drags', String(classClock.drags)] as const] : []),
  ];
}

/** "104 Wren Halden, Biscuit": what the gate calls. */
export function calledWords({ number, rider, horse }: Entry): string {
  const name = [rider, horse].filter((each) => each !== '').join(', ');
  return [number, name].filter((each) => each !== '').join(' ');
}

/** "Ground dragged, about 10 min", or the name of a break. */
export function pauseWords(row: Exclude<GoRow, { kind: 'go' }>): string {
  const minutes = printMinutes(row.to - row.from);
  return row.kind === 'drag' ? `Ground dragged, about ${minutes}` : `${row.title}, about ${minutes}`;
}

/** Who does not ride, by number where there is one. */
export function scratchedWords({ scratched }: Pick<GoTimes, 'scratched'>): string {
  return scratched.map((entry) => (entry.number === '' ? calledWords(entry) : entry.number)).join(', ');
}

/** The widest of the numbers and of the times, as texts. */
export function columnTexts(of: Survey): { numbers: readonly string[]; times: readonly string[] } {
  const times = goTimesOf(of);
  const list = of.course.class.list ?? [];
  return {
    numbers: [...list, ...ridingEntries(list)].map(({ number }) => number),
    times: times.rows.map(({ from }) => goTimeWords(times, from)),
  };
}
