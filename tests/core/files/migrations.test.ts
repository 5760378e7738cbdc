import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { VERSION } from '../../../src/core/course/course.ts';
import { MIGRATIONS, type Migration, migrate } from '../../../src/core/files/migrations.ts';
import { readCourse } from '../../../src/core/files/read.ts';

const steps: readonly Migration[] = [
  { from: 1, title: 'Cones are called markers', change: ({ cones, ...rest }) => ({ ...rest, markers: cones }) },
  { from: 2, title: 'Markers are counted', change: (file) => ({ ...file, count: String(file.markers).length }) },
];

describe('a file of a past version', () => {
  test('is brought forward step by step, and each step is told', () => {
    expect(migrate({ version: 1, cones: 'abc' }, 1, { to: 3, steps })).toEqual({
      kind: 'read',
      value: { version: 3, markers: 'abc', count: 3 },
      repairs: [
        'Brought from version 1 to 2: Cones are called markers.',
        'Brought from version 2 to 3: Markers are counted.',
      ],
    });
  });

  test('that no step starts from is refused', () => {
    expect(migrate({ version: 0 }, 0, { to: 3, steps })).toEqual({
      kind: 'refused',
      why: 'The file has version 0, which this program does not know; it reads 3.',
    });
  });

  test('has a step, and a file in seeds/old', () => {
    expect(MIGRATIONS.map((step) => step.from)).toEqual(Array.from({ length: VERSION - 1 }, (_, i) => i + 1));
    for (let version = 1; version <= VERSION; version += 1) {
      expect(readdirSync('seeds/old')).toContain(`version-${version}.course.json`);
    }
  });

  test.each(readdirSync('seeds/old'))('%s is still read', (name) => {
    expect(readCourse(readFileSync(`seeds/old/${name}`, 'utf8')).kind).toBe('read');
  });
});
