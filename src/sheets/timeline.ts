/** A day as a drawing: hours across, the classes in one row and the crew's work in another; told apart in black and white. */
import type { DayTimes } from '../core/change/day-times.ts';
import type { Seconds } from '../core/measure/quantity.ts';
import type { Mark } from '../core/plane/mark.ts';
import type { Role } from '../core/plane/role.ts';
import { CAP_HEIGHT, SMALLEST_FONT_SIZE, textWidth } from './lettering.ts';
import { type MarkBlock, wordsMark } from './title-block.ts';

const HOUR: Seconds = 3600;
/** Rows and letters, mm. */
const LABEL_WIDTH = 17;
const AXIS_HEIGHT = 6;
const CLASS_HEIGHT = 11;
const CREW_HEIGHT = 7;
const ROW_SPACE = 1.5;
const NUMBER = 4.4;
/** Between two lines of a hatching, and the thinnest bar that is still seen, mm. */
const HATCH = 1.6;
const LEAST_BAR = 0.6;
/** Between the words of two hours. */
const TICK_SPACE = 4;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function corners({ left, right, top, bottom }: Box) {
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

function line(points: readonly { x: number; y: number }[], width: number): Mark<'paper'> {
  return { kind: 'line', ink: 'words', points, width };
}

function outline(box: Box, width: number): Mark<'paper'> {
  const [first, ...rest] = corners(box);
  return line(first === undefined ? [] : [first, ...rest, first], width);
}

/** Slanting lines that fill a box. */
function hatching({ left, right, top, bottom }: Box): readonly Mark<'paper'>[] {
  const height = bottom - top;
  const marks: Mark<'paper'>[] = [];
  for (let at = left - height + HATCH; at < right; at += HATCH) {
    const from = Math.max(left, at);
    const to = Math.min(right, at + height);
    if (to - from < 1e-6) continue;
    const points = [
      { x: from, y: bottom - (from - at) },
      { x: to, y: bottom - (to - at) },
    ];
    marks.push(line(points, 0.15));
  }
  return marks;
}

function wordsIn(
  { left, right, top, bottom }: Box,
  text: string,
  size: number,
  weight: 'regular' | 'bold',
): readonly Mark<'paper'>[] {
  if (textWidth(text, size, weight) > right - left - 0.6) return [];
  const at = { x: (left + right) / 2, y: (top + bottom) / 2 + (CAP_HEIGHT * size) / 2 };
  return [{ kind: 'words', at, text, size, weight, align: 'middle', ink: 'words' }];
}

/** `8 am`, `12 pm`. */
function hourWords(hour: number): string {
  const of = hour % 24;
  return `${of % 12 === 0 ? 12 : of % 12} ${of < 12 ? 'am' : 'pm'}`;
}

/** A drawing of a day, its classes by their numbers in the running order; `breakTitle` names a break by id. */
export function timeline(
  times: DayTimes,
  breakTitle: (id: string) => string,
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
): MarkBlock {
  const first = Math.floor(times.starts / HOUR);
  const last = Math.max(first + 1, Math.ceil(times.finish / HOUR));
  const left = x + LABEL_WIDTH;
  const scale = (width - LABEL_WIDTH) / ((last - first) * HOUR);
  const at = (time: Seconds): number => left + (time - first * HOUR) * scale;
  const top = y + AXIS_HEIGHT;
  const crewTop = top + CLASS_HEIGHT + ROW_SPACE;
  const bottom = crewTop + CREW_HEIGHT;
  const box = ({ from, to }: { from: Seconds; to: Seconds }, [above, height]: readonly [number, number]): Box => {
    return { left: at(from), right: at(to), top: above, bottom: above + height };
  };
  const about = `${times.classes.length} classes with breaks and change-overs along the hours of the day.`;
  const role: Role = { tag: 'Figure', about };
  const label = (text: string, above: number, height: number): Mark<'paper'> =>
    wordsMark(text, x, above + height / 2 + (CAP_HEIGHT * SMALLEST_FONT_SIZE) / 2, { size: SMALLEST_FONT_SIZE, role });
  const marks: Mark<'paper'>[] = [label('Classes', top, CLASS_HEIGHT), label('Crew', crewTop, CREW_HEIGHT)];
  const widest = textWidth('12 pm', SMALLEST_FONT_SIZE) + TICK_SPACE;
  const step = Math.max(1, Math.ceil(widest / (HOUR * scale)));
  for (let hour = first; hour <= last; hour += 1) {
    const tick = at(hour * HOUR);
    marks.push({
      kind: 'line',
      ink: 'faint',
      points: [
        { x: tick, y: top - 1.5 },
        { x: tick, y: top - 0.3 },
      ],
      width: 0.15,
    });
    if ((hour - first) % step !== 0) continue;
    const align = hour === last ? 'end' : hour === first ? 'start' : 'middle';
    const text = hourWords(hour);
    marks.push({ kind: 'words', at: { x: tick, y: top - 2.4 }, text, size: SMALLEST_FONT_SIZE, ink: 'words', align });
  }
  for (const span of times.breaks) {
    const own = box(span, [top, CLASS_HEIGHT]);
    marks.push({ kind: 'area', ink: 'faint', ring: corners(own) }, outline(own, 0.15));
    marks.push(...wordsIn(own, breakTitle(span.id), SMALLEST_FONT_SIZE, 'regular'));
  }
  for (const [i, { drags, ...span }] of times.classes.entries()) {
    const own = box(span, [top, CLASS_HEIGHT]);
    marks.push(outline(own, 0.5), ...wordsIn(own, String(i + 1), NUMBER, 'bold'));
    for (const drag of drags) {
      const bar = box(drag, [crewTop, CREW_HEIGHT]);
      marks.push({
        kind: 'area',
        ink: 'words',
        ring: corners({ ...bar, right: Math.max(bar.right, bar.left + LEAST_BAR) }),
      });
    }
  }
  for (const change of [...times.classes.map((each) => each.change), times.takingDown]) {
    if (change.to - change.from < 1) continue;
    const own = box(change, [crewTop, CREW_HEIGHT]);
    marks.push(...hatching(own), outline(own, 0.25));
  }
  const said =
    'Numbers: classes, in running order. Grey: a break. Hatched: setting out, changing over, taking down. Black: the ground is dragged.';
  marks.push(wordsMark(said, x, bottom + 5, { size: SMALLEST_FONT_SIZE, role }));
  return { height: bottom + 6 - y, marks: marks.map((mark) => ({ ...mark, role })) };
}
