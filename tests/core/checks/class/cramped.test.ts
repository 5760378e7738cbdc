import { describe, expect, test } from 'vitest';
import type { Limits } from '../../../../src/core/checks/check.ts';
import { cramped } from '../../../../src/core/checks/class/cramped.ts';
import { blankCourse } from '../../../../src/core/course/blank.ts';
import { speed } from '../../../../src/core/horses/horse.ts';
import { STOCK_HORSE } from '../../../../src/core/horses/horses.ts';
import { preferredTurnRadius, speedOnEasyTurn } from '../../../../src/core/horses/turns.ts';
import { survey } from '../../../../src/core/survey.ts';
import { scene, type Thing } from '../scene.ts';

/** Every lost second is told. */
const ALL: Limits = { 'cramped.seconds': { most: 0, unit: 's', source: 'test', grade: 'E' } };
const jogs = (places: readonly (readonly [number, number, number])[], gait: 'jog' | 'lope' = 'jog', entries = 0) =>
  scene(
    places.map(
      (at): Thing => ({
        kind: 'run',
        at,
        values: { gap: gait === 'jog' ? 0.95 : 1.95, gait },
        leg: { gait, approach: gait },
      }),
    ),
    blankCourse({ class: { entries } }),
  );
const lost = (course: ReturnType<typeof jogs>) => cramped.findings(survey(course), ALL)[0]?.measured ?? 0;

describe('the speed on an easy turn', () => {
  test('is the gait’s own on the radius it likes, and half of it on a quarter of that', () => {
    const easy = preferredTurnRadius(STOCK_HORSE, 'jog');
    const jog = speed(STOCK_HORSE, 'jog');
    expect(speedOnEasyTurn(STOCK_HORSE, 'jog', easy)).toBeCloseTo(jog, 12);
    expect(speedOnEasyTurn(STOCK_HORSE, 'jog', easy / 4)).toBeCloseTo(jog / 2, 12);
    expect(speedOnEasyTurn(STOCK_HORSE, 'jog', 4 * easy)).toBeCloseTo(jog, 12);
  });
});

describe('a cramped pattern', () => {
  test('loses nothing on a straight and more the nearer its obstacles stand', () => {
    expect(
      lost(
        jogs([
          [60, 50, 0],
          [100, 50, 0],
          [140, 50, 0],
        ]),
      ),
    ).toBe(0);
    const wide = lost(
      jogs([
        [60, 30, 0],
        [120, 75, 180],
      ]),
    );
    const near = lost(
      jogs([
        [60, 45, 0],
        [70, 57, 180],
      ]),
    );
    expect(wide).toBeLessThan(near);
    expect(near).toBeGreaterThan(0.5);
  });

  test('loses as much at each of two equal places, and the class that much for every entry', () => {
    const says = cramped.findings(
      survey(
        jogs(
          [
            [60, 45, 0],
            [70, 57, 180],
          ],
          'jog',
          60,
        ),
      ),
      ALL,
    )[0]?.says;
    expect(says).toMatch(/with 60 entries/);
    expect(says).toContain('most on the way to the set of jog-overs (obstacle 2)');
  });

  test('counts a change of gait that has no room', () => {
    const sudden = scene([
      { kind: 'run', at: [60, 50], values: { gap: 1.95, gait: 'lope' }, leg: { gait: 'lope', approach: 'lope' } },
      { kind: 'back-lane', at: [86, 50], leg: { approach: 'lope' } },
    ]);
    const [finding] = cramped.findings(survey(sudden), ALL);
    const { up, down } = STOCK_HORSE.transition;
    expect(finding?.measured).toBeGreaterThanOrEqual(up.value + down.value);
    expect(finding?.says).toContain('in changes of gait without room');
  });
});
