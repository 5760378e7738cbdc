import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { courseSchema } from '../../../src/core/course/schema.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import { sampleCourse } from '../course/sample.ts';

function fieldOrders(value: unknown): readonly string[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = Array.isArray(value) ? [] : [Object.keys(value).join()];
  return [...own, ...Object.values(value).flatMap(fieldOrders)];
}

describe('the text of a course', () => {
  test('has its fields in the order of the schema', () => {
    const plain = { ...sampleCourse(), truck: [] };
    // Parameters have an order of their own; everything else is ordered by the schema.
    const bare = JSON.parse(JSON.stringify(plain), (key, value) => (key === 'values' ? {} : value));
    const written = JSON.parse(writeCourse(bare));
    expect(fieldOrders(written)).toEqual(fieldOrders(courseSchema.parse(bare)));
  });

  test('is the same whatever the order of fields in memory', () => {
    const course = sampleCourse();
    const reversed = JSON.parse(JSON.stringify(course), (_, value) =>
      typeof value === 'object' && value !== null && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).reverse())
        : value,
    );
    expect(Object.keys(reversed)[0]).toBe('notes');
    expect(writeCourse(reversed)).toBe(writeCourse(course));
  });

  test('ends with a line break, and no line but a text is longer than 100 signs', () => {
    const text = writeCourse(sampleCourse());
    expect(text.endsWith('}\n')).toBe(true);
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  });

  test('never holds a number that a file cannot hold', () => {
    const course = blankCourse();
    const broken = { ...course, arena: { ...course.arena, length: Number.NaN } };
    expect(() => writeCourse(broken)).toThrow('course.arena.length is NaN; a file holds finite numbers only');
  });
});
