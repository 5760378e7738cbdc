import { describe, expect, test } from 'vitest';
import { GAITS, type Sourced, speed } from '../../../src/core/horses/horse.ts';
import { HORSES, horseById, STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import {
  leanAtRadius,
  minTurnRadius,
  minTurnRadiusSource,
  preferredTurnRadius,
} from '../../../src/core/horses/turns.ts';

/** Every sourced number of a horse, with its path. */
function numbers(of: object, path = ''): [string, Sourced][] {
  return Object.entries(of).flatMap(([key, value]): [string, Sourced][] => {
    if (typeof value !== 'object' || value === null) return [];
    return 'source' in value ? [[`${path}${key}`, value as Sourced]] : numbers(value, `${path}${key}.`);
  });
}

describe.each(HORSES.map((horse) => [horse.id, horse] as const))('the %s', (id, horse) => {
  test('is found by its id', () => {
    expect(horseById(id)).toBe(horse);
  });

  test('has a source and a grade for every number', () => {
    const all = numbers(horse);
    expect(all.length).toBe(39);
    for (const [path, number] of all) {
      expect(number.source.length, path).toBeGreaterThan(7);
      expect(['P', 'W', 'D', 'M', 'E'], path).toContain(number.grade);
      if (number.grade === 'E') expect(number.source, path).toMatch(/estimate|stock horse/);
    }
  });

  test('keeps every number inside its own bounds', () => {
    for (const [path, { value, least, most }] of numbers(horse)) {
      expect(value, path).toBeGreaterThanOrEqual(least ?? value);
      expect(value, path).toBeLessThanOrEqual(most ?? value);
      expect(value, path).toBeGreaterThan(0);
    }
  });

  test('goes faster from gait to gait and turns wider', () => {
    const speeds = GAITS.map((gait) => speed(horse, gait));
    expect(speeds).toEqual([...speeds].sort((a, b) => a - b));
    const turns = GAITS.map((gait) => minTurnRadius(horse, gait));
    expect(turns).toEqual([...turns].sort((a, b) => a - b));
    for (const gait of GAITS) {
      expect(preferredTurnRadius(horse, gait)).toBeGreaterThan(minTurnRadius(horse, gait));
      expect(horse.gaits[gait].landing.least).toBeLessThan(horse.gaits[gait].landing.most ?? 0);
    }
  });
});

describe('the stock horse', () => {
  test('lands in the bands of the mule association, converted exactly', () => {
    const { walk, jog, lope } = STOCK_HORSE.gaits;
    const inches = ({ least = 0, most = 0 }: Sourced) =>
      [least / 0.0254, most / 0.0254].map((n) => Number(n.toFixed(9)));
    expect(inches(walk.landing)).toEqual([20, 24]);
    expect(inches(jog.landing)).toEqual([36, 42]);
    expect(inches(lope.landing)).toEqual([72, 84]);
  });

  test('lopes at a speed between 2.4 and 3.3 m/s, where stride and tempo agree', () => {
    expect(speed(STOCK_HORSE, 'lope')).toBeGreaterThan(2.4);
    expect(speed(STOCK_HORSE, 'lope')).toBeLessThan(3.3);
  });

  test('leans about 16 degrees on its smallest lope turn', () => {
    const lean = leanAtRadius(speed(STOCK_HORSE, 'lope'), minTurnRadius(STOCK_HORSE, 'lope'));
    expect((lean * 180) / Math.PI).toBeCloseTo(16.1, 1);
    expect(minTurnRadius(STOCK_HORSE, 'lope')).toBeCloseTo(10 * 0.3048, 3);
  });

  test('turns a jog on the radius that a serpentine asks for, which has its own source', () => {
    expect(minTurnRadius(STOCK_HORSE, 'jog')).toBe(1.5);
    expect(minTurnRadiusSource(STOCK_HORSE, 'jog')).toContain('serpentine');
    expect(minTurnRadiusSource(STOCK_HORSE, 'lope')).toContain('16 degrees');
  });

  test('turns wider when it goes faster, where its lean is what is known', () => {
    const { lope } = STOCK_HORSE.gaits;
    const faster = {
      ...STOCK_HORSE,
      gaits: { ...STOCK_HORSE.gaits, lope: { ...lope, stride: { ...lope.stride, value: 4 } } },
    };
    expect(minTurnRadius(faster, 'lope') / minTurnRadius(STOCK_HORSE, 'lope')).toBeCloseTo(4, 9);
  });

  test('is not found under a name that nobody has', () => {
    expect(horseById('unicorn')).toBeUndefined();
  });
});
