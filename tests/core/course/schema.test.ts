import { expect, test } from 'vitest';
import type * as z from 'zod/mini';
import type { Course } from '../../../src/core/course/course.ts';
import { courseSchema } from '../../../src/core/course/schema.ts';
import { sampleCourse } from './sample.ts';

type Scalar = string | number | boolean;
type Frozen<T> = T extends Scalar ? T : { readonly [Key in keyof T]: Frozen<T[Key]> };
/** Every field required, so that an optional one that only one side has is seen. A point's space is no field. */
type Full<T> = T extends Scalar
  ? T
  : T extends readonly (infer Item)[]
    ? readonly Full<Item>[]
    : { readonly [Key in keyof T as Key extends 'space' ? never : Key]-?: Full<T[Key]> };
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : false) : false;
type Read = z.infer<typeof courseSchema>;

test('the schema and the type say the same, both ways', () => {
  // These two lines fail to compile when one side has a field, or a kind of value, that the other lacks.
  const same: Same<Frozen<Read>, Frozen<Course>> = true;
  const full: Same<Full<Read>, Full<Course>> = true;
  expect([same, full]).toEqual([true, true]);
});

test('a course of all fields passes unchanged', () => {
  const course = sampleCourse();
  expect(courseSchema.parse(course)).toEqual(course);
});
