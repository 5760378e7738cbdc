import { describe, expect, test } from 'vitest';
import type { Limit } from '../../../../src/core/checks/check.ts';
import { aimsOf } from '../../../../src/core/checks/rulebooks/aims.ts';
import { isInBand } from '../../../../src/core/checks/rulebooks/band.ts';
import { bandOf, limitsOf } from '../../../../src/core/checks/rulebooks/rulebooks.ts';
import { survey } from '../../../../src/core/survey.ts';
import { judged, saidBy, scene, type Thing } from '../scene.ts';

const FT = 0.3048;
const MULE = { id: 'mule-association', house: {} };
const band = (ends: Pick<Limit, 'least' | 'most' | 'multiples'>): Limit => ({
  ...ends,
  unit: 'ft',
  source: 'test',
  grade: 'E',
});
const feet = (name: string, limit: Limit, value: number): readonly number[] =>
  aimsOf(name, limit, value * FT, MULE).map((aim) => Number((aim.value / FT).toFixed(6)));

describe('a fix aims', () => {
  test.each([
    // What is usual for a box, 6 ft, and then the edge.
    ['box.side', { least: 5.5 }, 4, [6, 5.5]],
    ['box.side', { least: 5, most: 6 }, 9, [6, 6]],
    // A band that does not hold what is usual has a middle of its own.
    ['box.side', { least: 8, most: 9 }, 4, [8.5, 8]],
    // The middle of both ends where nobody says what is usual, in the nearest multiple first.
    ['gap.lope', { least: 6, most: 7, multiples: true }, 8, [6.5, 7, 13, 12]],
    ['gap.lope', { least: 6, most: 7, multiples: true }, 5, [6.5, 6]],
    // One end alone is all that is known.
    ['bridge.width', { least: 3 }, 2, [3]],
    ['raised.lope', { most: 1 }, 2, [1]],
  ] as const)('%s of %j from %d ft at %j', (name, ends, value, aims) => {
    expect(feet(name, band(ends), value)).toEqual(aims);
  });

  test('at values that are allowed, in every limit of every book', () => {
    for (const id of ['mule-association', 'trade-press', 'ewu', 'led', 'ground-poles']) {
      const limits = limitsOf(survey(judged(scene([]), id)).course);
      for (const [name, limit] of Object.entries(limits)) {
        for (const value of [0.01, 0.3, 0.75, 1.3, 2.5, 20]) {
          if (isInBand(bandOf(limit), value)) continue;
          for (const aim of aimsOf(name, limit, value, { id, house: {} })) {
            expect(isInBand(bandOf(limit), aim.value), `${id} ${name} ${value}`).toBe(true);
          }
        }
      }
    }
  });
});

describe('the first fix lands on what the trade builds', () => {
  const firstFix = (thing: Omit<Thing, 'at'>, check: string, book = 'mule-association'): string | undefined =>
    saidBy(judged(scene([{ ...thing, at: [60, 50] }]), book), check)[0]?.remedies[0]?.says;

  test.each([
    [{ kind: 'box', values: { side: 4 * FT } }, 'box-side', "Build the box (obstacle 1) with 6'"],
    [{ kind: 'box', values: { side: 4 * FT } }, 'back-clearance', "Build the box (obstacle 1) with 6'"],
    [{ kind: 'box', values: { side: 5.2 * FT } }, 'box-side', "Build the box (obstacle 1) with 6'"],
    [{ kind: 'back-l', values: { width: 2 * FT } }, 'back-width', "Build the back-through L (obstacle 1) with 3'"],
    [{ kind: 'back-l', values: { width: 2 * FT } }, 'back-clearance', "Build the back-through L (obstacle 1) with 3'"],
  ])('%j, %s', (thing, check, says) => {
    expect(firstFix(thing, check)).toBe(says);
  });
});
