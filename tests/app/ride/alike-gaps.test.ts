import { expect, test } from 'vitest';
import { alikeGaps, placesWords } from '../../../src/app/ride/alike-gaps.ts';
import { stripGaps } from '../../../src/app/strip/track.ts';
import { survey } from '../../../src/core/survey.ts';
import { threeObstacles } from '../../desk/three-obstacles.ts';

test.each([
  [[2], 'Gap 2'],
  [[1, 2], 'Gaps 1, 2'],
  [[1, 2, 3, 4], 'Gaps 1 to 4'],
  [[1, 3, 4], 'Gaps 1, 3, 4'],
])('gaps %j are called %s', (places, words) => {
  expect(placesWords(places)).toBe(words);
});

test('the gaps of an even run are told once, and none is forgotten', () => {
  const gaps = stripGaps(survey(threeObstacles())).filter(({ gap }) => gap.leg === 0);
  const told = alikeGaps(gaps, 'ft');
  expect(told).toHaveLength(1);
  expect(told[0]?.places).toEqual(gaps.map((_, i) => i + 1));
  expect(told[0]?.says).not.toContain('Jog-overs');
});
