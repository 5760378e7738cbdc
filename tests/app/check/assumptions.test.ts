import { expect, test } from 'vitest';
import { assumptions, GRADE_WORDS } from '../../../src/app/check/assumptions.ts';
import { HORSES } from '../../../src/core/horses/horses.ts';

/** Numbers with a source in a horse's data file, however deep. */
function sourced(data: unknown): number {
  if (typeof data !== 'object' || data === null) return 0;
  if ('source' in data) return 1;
  return Object.values(data).reduce((sum: number, each) => sum + sourced(each), 0);
}

test.each(HORSES.map((horse) => [horse.title, horse] as const))('all that is assumed of a %s is told', (_, horse) => {
  const all = assumptions(horse, 'ft');
  expect(all).toHaveLength(sourced(horse));
  expect(new Set(all.map((each) => each.what)).size).toBe(all.length);
  for (const { value, source, grade } of all) {
    expect(value).toMatch(/\d/);
    expect(source).not.toBe('');
    expect(GRADE_WORDS[grade]).toBeDefined();
  }
});
