import type { Day } from '../course/course.ts';
import { printMinutes } from '../measure/duration.ts';
import type { Seconds } from '../measure/quantity.ts';
import { andList } from '../text/sentence.ts';
import type { DayParts } from './day-savings.ts';
import type { BrokenRule, DayTimes, RiderWait } from './day-times.ts';

/** What every timetable says of its times. */
export const DAY_CAUTION =
  'Times are estimates: of horses, of riders between goes and of the crew. Leave room, and go by the clock on the day.';

function classTitle({ classes }: Day, id: string): string {
  return classes.find((each) => each.id === id)?.title ?? id;
}

/** One sentence about a fixed thing that an order does not keep. */
export function brokenWords(day: Day, rule: BrokenRule): string {
  if (rule.kind === 'judge') return `The classes of ${rule.judge} are in ${rule.blocks} blocks; one would be right.`;
  return `${classTitle(day, rule.id)} begins ${printMinutes(rule.by)} after its set start.`;
}

/** One sentence about a class that waits for riders. */
export function waitWords(day: Day, { id, before, riders, rest, wanted, waits }: RiderWait): string {
  const who = riders.length === 1 ? `rider ${riders[0]}` : `riders ${andList(riders)}`;
  const had = rest < 1 ? 'no rest' : `${printMinutes(rest)} of rest`;
  return `${classTitle(day, id)} waits ${printMinutes(waits)} for ${who} of ${classTitle(day, before)}: ${had} otherwise, and ${printMinutes(wanted)} wanted.`;
}

/** One sentence about each break that is not taken: after the last class there is nobody left to wait. */
export function untakenWords(day: Day, { breaks }: Pick<DayTimes, 'breaks'>): readonly string[] {
  return day.breaks
    .filter(({ id }) => !breaks.some((taken) => taken.id === id))
    .map(({ title }) => `${title} is not needed: no class begins after it is due.`);
}

/** What the parts of a day are called, in the order in which they are told. */
export const DAY_PARTS: readonly (readonly [keyof DayParts, string])[] = [
  ['riding', 'Riding'],
  ['pauses', 'Between goes'],
  ['dragging', 'Dragging'],
  ['changing', 'Changing over'],
  ['breaks', 'Breaks'],
  ['idle', 'Waiting'],
];

/** "12 min earlier"; later where it is less than 0. */
export function savesWords(saves: Seconds): string {
  return `${printMinutes(Math.abs(saves))} ${saves < 0 ? 'later' : 'earlier'}`;
}
