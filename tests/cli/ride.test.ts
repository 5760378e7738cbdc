import { expect, test } from 'vitest';
import { survey } from '../../src/core/survey.ts';
import { caught, courseFile, smallCourse } from './caught.ts';

test('ride prints the line of the survey as one JSON document', async () => {
  const course = smallCourse();
  const { code, out, err } = await caught('ride', courseFile(course), '--json');
  const told = JSON.parse(out);
  const { line } = survey(course);
  expect([code, err]).toEqual([0, '']);
  expect(told.length).toBeCloseTo(line.length, 6);
  expect(told.seconds).toBeCloseTo(line.clock.go, 6);
  expect(told.legs.map((leg: { title: string }) => leg.title)).toEqual(['Run of poles', 'Bridge']);
  expect(told.gaps).toHaveLength(3);
  expect(told.gaps[0].taped).toBeCloseTo(0.9144, 6);
  expect(told.gaps[0].landings).toMatchObject({ count: 1, fits: true });
  expect(told.crossings).toHaveLength(4);
});

test('ride prints legs and gaps in the unit of the course', async () => {
  const { code, out } = await caught('ride', courseFile(smallCourse({ gap: 1.3716 })));
  expect(code).toBe(0);
  expect(out).toContain('Larkhollow Fairground: practice: ');
  expect(out).toMatch(/ 1 {2}Run of poles {2}over the poles/);
  expect(out).toContain('4\' 6"');
  expect(out).toContain('does not fit');
});
