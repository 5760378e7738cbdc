import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { closerFindingsOf } from '../../../src/core/checks/checks.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { survey } from '../../../src/core/survey.ts';

const SEEDS = readdirSync('seeds/starters').filter((name) => name.endsWith('.course.json'));
const FAULTY = 'practice-with-faults.course.json';

function told(name: string) {
  const reading = readCourse(readFileSync(`seeds/starters/${name}`, 'utf8'));
  if (reading.kind !== 'read') throw new Error(`${name}: ${reading.why}`);
  return closerFindingsOf(survey(reading.course));
}

describe('starter courses', () => {
  test.each(SEEDS.filter((name) => name !== FAULTY))('%s has nothing that must or should be mended', (name) => {
    expect(told(name).flatMap(({ weight, says }) => (weight === 'note' ? [] : [says]))).toEqual([]);
  });

  test.each(SEEDS)('%s is ridden the best way', (name) => {
    expect(told(name).flatMap(({ check, says }) => (check === 'better-way' ? [says] : []))).toEqual([]);
  });

  test('the course with faults keeps them, and has a fix for most', () => {
    const heavy = told(FAULTY).filter(({ weight }) => weight !== 'note');
    expect(new Set(heavy.map(({ check }) => check)).size).toBeGreaterThanOrEqual(5);
    expect(heavy.filter(({ remedies }) => remedies.length > 0).length).toBeGreaterThan(heavy.length / 2);
  });
});
