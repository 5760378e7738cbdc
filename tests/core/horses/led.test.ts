import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Level } from '../../../src/core/course/course.ts';
import { HORSES, ledHorse } from '../../../src/core/horses/horses.ts';
import { minTurnRadius, tightestTurnRadius } from '../../../src/core/horses/turns.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { judged, saidBy, scene } from '../checks/scene.ts';

describe.each(HORSES)('a led $id', (horse) => {
  test('turns as tight as any such horse, and is in all else the same', () => {
    const led = ledHorse(horse);
    for (const gait of ['walk', 'jog', 'lope'] as const) {
      expect(minTurnRadius(led, gait)).toBeCloseTo(tightestTurnRadius(horse, gait), 12);
      expect(minTurnRadius(led, gait)).toBeLessThan(minTurnRadius(horse, gait));
      expect(led.gaits[gait].stride).toBe(horse.gaits[gait].stride);
    }
    expect(ledHorse(horse)).toBe(led);
  });
});

describe('the serpentines of the book for led horses', () => {
  const turns = (level: Level, gait: 'walk' | 'jog', feet: number) =>
    saidBy(
      judged(
        scene(
          [{ kind: 'serpentine', at: [80, 50], values: { gap: feet * FOOT, gait }, leg: { gait, approach: gait } }],
          blankCourse({ class: { level } }),
        ),
        'led',
      ),
      'turn',
    ).map(({ weight }) => weight);

  test.each([
    ['walk', 4],
    ['walk', 5],
    ['jog', 7],
  ] as const)('at a %s with %d ft can be led and not ridden', (gait, feet) => {
    expect(turns('led', gait, feet)).toEqual([]);
    expect(turns('open', gait, feet)).toEqual(['must']);
  });

  test('that are wider can be both', () => {
    expect(turns('open', 'walk', 5.5)).toEqual([]);
    expect(turns('open', 'jog', 8)).toEqual([]);
  });
});
