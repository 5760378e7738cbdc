import { takeWays } from '../../course/edit-ride.ts';
import { FOOT, type LengthUnit, type Metres, type Seconds } from '../../measure/quantity.ts';
import type { BetterWay } from '../../ride/best-ways.ts';
import { bestWaysOf, type Survey, survey } from '../../survey.ts';
import { andList } from '../../text/sentence.ts';
import type { Check, RawFinding } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';

/** A saving is worth a word from here on. Estimate. */
const WORTH: { readonly length: Metres; readonly time: Seconds } = { length: 5 * FOOT, time: 2 };

/** What the whole ride saves; below 0 it is that much more. */
interface Saving {
  readonly length: Metres;
  readonly time: Seconds;
}

function isWorthwhile({ length, time }: Saving): boolean {
  return (time >= WORTH.time && length > -WORTH.length) || (length >= WORTH.length && time >= 0);
}

/** To the foot or the decimetre, because nobody rides more exactly than that. */
function roughWords(length: Metres, unit: LengthUnit): string {
  const step = unit === 'ft' ? FOOT : 0.1;
  return valueWords('length', step * Math.round(length / step), unit);
}

/** "42' and 9 s less", "9 s less, though 4' longer". */
function savingWords({ length, time }: Saving, unit: LengthUnit): string {
  const [far, long] = [roughWords(Math.abs(length), unit), valueWords('time', Math.max(0, time), unit)];
  const [noLength, noTime] = [roughWords(0, unit), valueWords('time', 0, unit)];
  if (far === noLength) return `${long} less`;
  if (length < 0) return `${long} less, though ${far} longer`;
  return long === noTime ? `${far} less` : `${far} and ${long} less`;
}

/** `the fan (obstacle 3) ridden "over the fan, turning right"`. */
function changeWords(surveyed: Survey, { index, passage }: BetterWay): string {
  const obstacle = surveyed.layout.ride.legs[index]?.obstacle ?? '';
  const passages = surveyed.layout.obstacles.find(({ id }) => id === obstacle)?.passages ?? [];
  const title = passages.find(({ id }) => id === passage)?.title ?? passage;
  return `${obstacleWords(surveyed, obstacle)} ridden "${title}"`;
}

function groupFinding(surveyed: Survey, group: readonly BetterWay[]): RawFinding | undefined {
  const { course, layout, line } = surveyed;
  const better = takeWays(course, group);
  const { line: after } = survey(better);
  const saving = { length: line.length - after.length, time: line.clock.go - after.clock.go };
  const [first] = group;
  if (first === undefined || !isWorthwhile(saving) || after.breaks.length > line.breaks.length) return undefined;
  const legs = group.flatMap(({ index }) => layout.ride.legs[index] ?? []);
  const start = line.elements.find(({ leg, part }) => leg === first.index && part === 'obstacle')?.path[0]?.start;
  const saved = savingWords(saving, course.unit);
  const changes = andList(group.map((each) => changeWords(surveyed, each)));
  return {
    id: `better-way:${legs.map(({ id }) => id).join('+')}`,
    check: 'better-way',
    weight: betterWay.weight,
    says: `The whole ride is ${saved} with ${changes}.`,
    because: betterWay.because,
    at: start === undefined ? layout.ride.start : { x: start.x, y: start.y },
    leg: first.index,
    keys: [...new Set(legs.map(({ obstacle }) => obstacle))],
    measured: saving.time,
    source: 'the line of travel and its clock, before and after; a saving is told from 5 ft or 2 s on: estimate',
    proposals: [
      {
        says: `Ride it the better way: ${saved}`,
        meant: true,
        edit: (now) => (now === course ? better : takeWays(now, group)),
      },
    ],
  };
}

export const betterWay: Check = {
  id: 'better-way',
  says: 'Every obstacle is ridden the way round that suits the whole ride.',
  because:
    'Ridden against its sense, an obstacle costs a detour before or after it: that tires the horse and shows nothing more.',
  weight: 'note',
  limits: [],
  runs: 'closer',
  findings: (surveyed) => bestWaysOf(surveyed).groups.flatMap((group) => groupFinding(surveyed, group) ?? []),
};
