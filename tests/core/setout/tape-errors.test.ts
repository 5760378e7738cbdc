import { describe, expect, test } from 'vitest';
import { observationError, USUAL_TAPE } from '../../../src/core/setout/tape-errors.ts';

const CREW = { people: 2, tapes: 1, tape: 30, marked: 'm', rightAngle: 'board' } as const;
const AT = { length: 1, slope: 0, reach: 1 };

describe('what is assumed of tapes', () => {
  test('says of every number where it comes from, and keeps it in its bounds', () => {
    const all = Object.entries(USUAL_TAPE);
    expect(all.length).toBe(17);
    for (const [name, { value, least = value, most = value, source, grade }] of all) {
      expect(source, name).toMatch(grade === 'E' ? /^estimate: / : /memory/);
      expect(['E', 'M'], name).toContain(grade);
      expect(value, name).toBeGreaterThanOrEqual(least);
      expect(value, name).toBeLessThanOrEqual(most);
    }
  });

  test('a longer tape, a slanted gap and a person alone are less sure', () => {
    const usual = observationError('gap', AT, CREW);
    expect(observationError('gap', { ...AT, length: 20 }, CREW)).toBeGreaterThan(usual);
    expect(observationError('gap', { ...AT, slope: 0.7 }, CREW)).toBeGreaterThan(usual);
    expect(observationError('gap', AT, { ...CREW, people: 1 })).toBeGreaterThan(usual);
  });

  test('a tape that is too short and is laid again is less sure than a long one', () => {
    const off = (tape: number): number => observationError('off-wall', { ...AT, length: 24 }, { ...CREW, tape });
    expect(off(12)).toBeGreaterThan(off(24));
    expect(off(6)).toBeGreaterThan(off(12));
    expect(off(24)).toBe(off(30));
  });
});
