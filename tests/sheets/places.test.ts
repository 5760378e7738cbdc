import { describe, expect, test } from 'vitest';
import type { Course } from '../../src/core/course/course.ts';
import { distance } from '../../src/core/plane/point.ts';
import { goingOf } from '../../src/core/ride/clock.ts';
import { linePlaces } from '../../src/core/ride/line-places.ts';
import { type Survey, survey } from '../../src/core/survey.ts';
import { drawing } from '../../src/sheets/drawing.ts';
import { instructions } from '../../src/sheets/instructions.ts';
import type { WordsMark } from '../../src/sheets/lettering.ts';
import { onPaper, type PaperTransform } from '../../src/sheets/paper-transform.ts';
import { RANDOM_COURSES, STARTERS } from '../core/ride/courses.ts';

/** A portrait sheet at 1:400, the datum corner at its lower left. */
const TRANSFORM: PaperTransform = { scale: 400, x: 20, y: 180, turned: false };
const BOUNDS = { minX: 5, minY: 5, maxX: 285, maxY: 205 };

const middle = ([a, b]: readonly { readonly x: number; readonly y: number }[]) => ({
  x: ((a?.x ?? 0) + (b?.x ?? 0)) / 2,
  y: ((a?.y ?? 0) + (b?.y ?? 0)) / 2,
});

/** Each tick across the line is at a place, each place has its word on the drawing, and each stroke of a gait ends at one of them. */
function expectDrawn(of: Survey): void {
  const { line } = of;
  const marks = drawing(of, TRANSFORM, BOUNDS);
  const ticks = marks.flatMap((mark) =>
    mark.kind === 'line' && mark.ink === 'words' && mark.width === 0.35 && mark.points.length === 2
      ? [mark.points]
      : [],
  );
  const places = linePlaces(line).map(({ pose }) => onPaper(TRANSFORM, pose));
  for (const tick of ticks) {
    expect(Math.min(...places.map((place) => distance(middle(tick), place)))).toBeLessThan(1e-6);
  }
  const words = marks.filter((mark): mark is WordsMark => mark.kind === 'words').map(({ text }) => text);
  for (const { words: own } of linePlaces(line)) {
    // Where the horse turns as well, the turn is told with them: "halt, 360° left, walk".
    expect(
      words.some((text) => own.every((each) => text.split(', ').join(' ').includes(each.replace(', ', ' ')))),
    ).toBe(true);
  }

  const transitions = line.transitions.map(({ pose }) => onPaper(TRANSFORM, pose));
  const strokes = marks.flatMap((mark) =>
    mark.kind === 'line' && (mark.ink === 'walk' || mark.ink === 'jog' || mark.ink === 'lope') ? [mark] : [],
  );
  for (const [i, stroke] of strokes.entries()) {
    const next = strokes[i + 1];
    const end = stroke.points.at(-1);
    if (next === undefined || end === undefined || next.ink === stroke.ink) continue;
    const here = next.points[0] ?? end;
    // Between two strokes in different gaits lies a place, or the horse halts and does something else.
    if (distance(here, end) > 1e-6) continue;
    expect(Math.min(...transitions.map((at) => distance(at, end)))).toBeLessThan(1e-6);
  }
}

/** The sentence of a leg names each gait that is taken up on the way to its obstacle or over it, and no other. */
function expectTold(of: Survey): void {
  const { line, layout } = of;
  for (const [leg, { text }] of instructions(of).entries()) {
    if ((layout.ride.legs[leg]?.words ?? '').trim() !== '') continue;
    const named = new Set([...text.matchAll(/\b(walk|jog|lope)\b/gi)].map(([gait]) => gait.toLowerCase()));
    const taken = line.transitions.filter((each) => each.leg === leg && each.after !== 'standing');
    // After a halt at the obstacle the horse goes on as it came: that is not told again.
    const over = line.elements.find((each) => each.leg === leg && each.part === 'obstacle')?.from ?? line.length;
    for (const { after } of taken.filter(({ at }) => at < over - 1e-6)) expect([...named], text).toContain(after);
    const leads = new Set(line.leads.filter((each) => each.leg === leg).map(({ lead }) => lead));
    const told = [...text.matchAll(/\b(left|right) lead\b/g)].map(([, lead]) => lead);
    for (const lead of told) expect([...leads], text).toContain(lead);
    // Each lead of the way to it, and the one over it, in the order in which they are ridden.
    const before = line.leads.filter((each) => each.leg === leg && each.from < over && each.lead !== null);
    const inOrder = before.map(({ lead }) => lead).filter((lead, i, all) => lead !== all[i - 1]);
    const isLoped = layout.ride.legs[leg]?.approach === 'lope';
    if (isLoped && inOrder.length > 1) expect(told.slice(0, inOrder.length), text).toEqual(inOrder);
    const departs = taken.some(({ at, after }) => after === 'lope' && at < over - 1e-6);
    if (departs && !leads.has(null)) expect(told.length, text).toBeGreaterThan(0);
    const ridden = new Set(line.elements.filter((each) => each.leg === leg).map(goingOf));
    for (const gait of named) expect([...ridden], text).toContain(gait);
  }
}

describe('the drawing, the words and the line agree on the place of every transition', () => {
  test.each(STARTERS)('of %s', (_, course: Course) => {
    expectDrawn(survey(course));
    expectTold(survey(course));
  });

  test('of a hundred random courses', () => {
    for (const course of RANDOM_COURSES) {
      expectDrawn(survey(course));
      expectTold(survey(course));
    }
  });
});
