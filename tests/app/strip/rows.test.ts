import { describe, expect, test } from 'vitest';
import { bendSpans, changeWords, clockTicks, leadSpans, tightestTurn } from '../../../src/app/strip/rows.ts';
import { minTurnRadius } from '../../../src/core/horses/turns.ts';
import type { LeadNote, LeadStretch } from '../../../src/core/ride/line.ts';
import { ridePositionAt } from '../../../src/core/ride/playing.ts';
import { survey } from '../../../src/core/survey.ts';
import { threeObstacles } from '../../desk/three-obstacles.ts';

const surveyed = survey(threeObstacles());
const { line, horse } = surveyed;

describe('the bend of the line', () => {
  test('is 1 on an arc of the least turn to the left, −1 to the right, 0 on a straight', () => {
    const [element] = line.elements;
    if (element === undefined) throw new Error('no line');
    const least = minTurnRadius(horse, element.gait);
    const start = { x: 0, y: 0, angle: 0 };
    const path = [1 / least, -1 / least, 0].map((curvature) => ({ start, length: 2, curvature }));
    const spans = bendSpans([{ ...element, move: 'ride', path, from: 5, length: 6 }], horse);
    expect(spans.map(({ from, to }) => [from, to])).toEqual([
      [5, 7],
      [7, 9],
      [9, 11],
    ]);
    expect(spans.map(({ share }) => share)).toEqual([expect.closeTo(1, 12), expect.closeTo(-1, 12), 0]);
    expect(tightestTurn([{ ...element, path }], horse)).toEqual({ radius: expect.closeTo(least, 9), least });
  });

  test('of a straight line has no tightest turn', () => {
    const [element] = line.elements;
    if (element === undefined) throw new Error('no line');
    const path = [{ start: { x: 0, y: 0, angle: 0 }, length: 2, curvature: 0 }];
    expect(tightestTurn([{ ...element, path }], horse)).toBeUndefined();
  });
});

describe('the lane of leads', () => {
  const stretch = (from: number, to: number, lead: LeadStretch['lead']): LeadStretch => ({
    ...{ leg: 0, lope: 0, part: 'approach', from, to, bend: null, radius: null, lead, chosen: false },
  });

  test('joins what is alike and follows on, and leaves out what is on no lead', () => {
    const leads = [stretch(0, 2, 'left'), stretch(2, 5, 'left'), stretch(5, 6, 'right'), stretch(8, 9, null)];
    expect(leadSpans({ leads, leadNotes: [] })).toEqual([
      { from: 0, to: 5, lead: 'left', fault: null },
      { from: 5, to: 6, lead: 'right', fault: null },
    ]);
  });

  test('marks the wrong lead where it is ridden, and nowhere else', () => {
    const note: LeadNote = {
      ...{ kind: 'wrong-lead', leg: 0, from: 2, to: 5, at: { x: 0, y: 0 }, lead: 'left', bend: 'right', radius: 3 },
    };
    const spans = leadSpans({ leads: [stretch(0, 2, 'left'), stretch(2, 5, 'left')], leadNotes: [note] });
    expect(spans.map(({ fault }) => fault)).toEqual([null, 'wrong-lead']);
  });
});

test.each([
  ['standing', 'walk', 'up to walk'],
  ['walk', 'lope', 'up to lope'],
  ['lope', 'jog', 'down to jog'],
  ['jog', 'standing', 'halt'],
] as const)('from %s to %s is told as %s', (before, after, words) => {
  expect(changeWords({ before, after })).toBe(words);
});

describe('the clock along the line', () => {
  test('ticks where the horse then is, never nearer than asked, ever later', () => {
    const ticks = clockTicks(line, 6);
    expect(ticks.length).toBeGreaterThan(3);
    for (const [i, { at, time }] of ticks.entries()) {
      expect(ridePositionAt(line, time)?.at).toBeCloseTo(at, 9);
      const before = ticks[i - 1];
      if (before !== undefined) expect(at - before.at).toBeGreaterThanOrEqual(6);
      if (before !== undefined) expect(time).toBeGreaterThan(before.time);
    }
  });
});
