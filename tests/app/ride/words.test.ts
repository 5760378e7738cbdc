import { describe, expect, test } from 'vitest';
import { likelihoodWords, worstNotes } from '../../../src/app/ride/print-words.ts';
import { changeSentence, firstEnd, leadSentence, leadWords } from '../../../src/app/ride/ride-words.ts';
import { costliestLeg, ifEntered } from '../../../src/app/ride/what-if.ts';
import type { PrintNote } from '../../../src/core/ride/print-notes.ts';
import { survey } from '../../../src/core/survey.ts';
import { printsOf } from '../../../src/core/survey-prints.ts';
import { threeObstacles } from '../../desk/three-obstacles.ts';

test.each([
  [1, 'in nearly every go'],
  [0.8, 'in most goes'],
  [0.5, 'in about every other go'],
  [0.25, 'in about one go in four'],
  [0.1, 'in about one go in ten'],
  [0.02, 'in a few goes in a hundred'],
  [0, 'hardly ever'],
])('a likelihood of %d is told as %s', (likelihood, words) => {
  expect(likelihoodWords(likelihood)).toBe(words);
});

test('of the hooves on one pole the likeliest is told, once in each leg', () => {
  const [print] = printsOf(survey(threeObstacles()));
  if (print === undefined) throw new Error('no print');
  const note = (key: string, likelihood: number, leg = 0): PrintNote => ({
    ...{ kind: 'near', print: { ...print, leg }, key, clear: 0.02, likelihood },
  });
  const worst = worstNotes([note('a', 0.2), note('a', 0.6), note('b', 0.1), note('a', 0.3, 1)]);
  expect(worst.map(({ key, likelihood }) => [key, likelihood])).toEqual([
    ['a', 0.6],
    ['b', 0.1],
    ['a', 0.3],
  ]);
});

test.each([
  [0, 'west'],
  [Math.PI, 'east'],
  [Math.PI / 2, 'south'],
  [-Math.PI / 2, 'north'],
])('the first end of a pole at %d lies towards the %s', (angle, wall) => {
  expect(firstEnd(angle)).toBe(wall);
});

describe('leads and changes in words', () => {
  const stretch = { leg: 0, lope: 0, part: 'approach', from: 0, to: 9, bend: 'left', radius: 5 } as const;

  test('say the lead and whence it is', () => {
    expect(leadWords([{ ...stretch, lead: 'left', chosen: false }])).toBe('left lead, from the bend');
    expect(leadWords([{ ...stretch, lead: 'right', chosen: true }])).toBe('right lead, as chosen');
    expect(leadWords([{ ...stretch, bend: null, radius: null, lead: null, chosen: false }])).toContain('either');
    expect(leadWords([])).toBeNull();
  });

  test('say what was measured and what is wanted', () => {
    const note = { leg: 0, from: 0, to: 9, at: { x: 0, y: 0 } } as const;
    expect(leadSentence({ ...note, kind: 'wrong-lead', lead: 'left', bend: 'right', radius: 3.048 }, 'ft')).toBe(
      "Wrong lead: the bend to the right of 10' is loped on the left lead.",
    );
    const where = { place: 4.5, pose: { x: 0, y: 0, angle: 0 } };
    const change = { ...note, ...where, kind: 'change', before: 'left', after: 'right', fits: false } as const;
    expect(leadSentence({ ...change, room: 2, wants: 4 }, 'm')).toContain('2.00 m of room, 4.00 m needed');
    const place = { at: 1.524, pose: { x: 0, y: 0, angle: 0 }, from: 0 };
    const up = { leg: 0, before: 'walk', after: 'lope', ...place, steady: true } as const;
    const room = { ...up, length: 3.048, room: 1.524, fits: false } as const;
    expect(changeSentence(room, 'ft')).toBe("Up to lope: not enough room, takes 10' and has 5'.");
  });
});

describe('a class of another size', () => {
  const surveyed = survey(threeObstacles());

  test('rides as often as it has entries, and nothing of the course changes', () => {
    const { go } = surveyed.line.clock;
    for (const entries of [15, 70]) expect(ifEntered(surveyed, entries).riding).toBeCloseTo(entries * go, 6);
    expect(surveyed.course.class.entries).toBe(survey(threeObstacles()).course.class.entries);
  });

  test('has one leg that costs it most', () => {
    const clock = ifEntered(surveyed, 30);
    const most = Math.max(...clock.legs.map((leg) => leg.class));
    expect(clock.legs[costliestLeg(clock) ?? -1]?.class).toBe(most);
  });
});
