import { expect, test } from 'vitest';
import { currentLayout } from '../../../src/core/course/course.ts';
import { tradeNoun, tradeTitle } from '../../../src/core/course/obstacle-title.ts';
import type { Gait } from '../../../src/core/horses/horse.ts';
import { threeObstacles } from '../../desk/three-obstacles.ts';

const { obstacles, ride } = currentLayout(threeObstacles());
const [run, fan] = obstacles;
if (run === undefined || fan === undefined) throw new Error('there are three');

const riddenAt = (gait: Gait) => ({
  ride: { ...ride, legs: ride.legs.map((leg) => (leg.obstacle === run.id ? { ...leg, gait } : leg)) },
});

test('straight poles are called by the gait over them', () => {
  expect((['walk', 'jog', 'lope'] as const).map((gait) => tradeTitle(run, riddenAt(gait)))).toEqual([
    ...['Walk-overs', 'Jog-overs', 'Lope-overs'],
  ]);
  expect(tradeNoun(run, riddenAt('lope'))).toBe('set of lope-overs');
});

test('one pole is one, and poles that nobody rides are poles', () => {
  const one = { ...run, pieces: run.pieces.slice(0, 1) };
  expect(tradeTitle(one, riddenAt('jog'))).toBe('Jog-over');
  expect(tradeNoun(one, riddenAt('jog'))).toBe('jog-over');
  const nobody = { ride: { ...ride, legs: [] } };
  expect(tradeTitle(run, nobody)).toBe('Poles');
  expect(tradeNoun(run, nobody)).toBe('set of poles');
});

test('what has one title keeps it at every gait', () => {
  expect(tradeTitle(fan, { ride })).toBe('Fan');
  expect(tradeNoun(fan, { ride })).toBe('fan');
});
