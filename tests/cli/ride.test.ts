import { expect, test } from 'vitest';
import { survey } from '../../src/core/survey.ts';
import { printNotesOf, printsOf } from '../../src/core/survey-prints.ts';
import { courseFile, runCli, smallCourse } from './run-cli.ts';

test('ride prints the line of the survey as one JSON document', async () => {
  const course = smallCourse();
  const { code, out, err } = await runCli('ride', courseFile(course), '--json');
  const told = JSON.parse(out);
  const { line } = survey(course);
  expect([code, err]).toEqual([0, '']);
  expect(told.length).toBeCloseTo(line.length, 6);
  expect(told.seconds).toBeCloseTo(line.clock.go, 6);
  expect(told.legs.map((leg: { title: string }) => leg.title)).toEqual(['Jog-overs', 'Bridge']);
  expect(told.gaps).toHaveLength(3);
  expect(told.gaps[0].taped).toBeCloseTo(0.9144, 6);
  expect(told.gaps[0].landings).toMatchObject({ count: 1, fits: true });
  expect(told.crossings).toHaveLength(4);
});

test('ride tells landings, prints, leads, transitions and times in its document', async () => {
  const course = smallCourse();
  const { out } = await runCli('ride', courseFile(course), '--json');
  const told = JSON.parse(out);
  const surveyed = survey(course);
  const plain = (value: unknown) => JSON.parse(JSON.stringify(value));
  expect(told.prints.length).toBeGreaterThan(40);
  expect(told.prints).toHaveLength(printsOf(surveyed).length);
  expect(told.prints[5].point.x).toBeCloseTo(printsOf(surveyed)[5]?.point.x ?? Number.NaN, 6);
  expect(told.printNotes).toHaveLength(printNotesOf(surveyed).length);
  expect(told.transitions).toHaveLength(surveyed.line.transitions.length);
  expect(told.shown.map(({ gait }: { gait: string }) => gait)).toEqual(['walk', 'jog', 'lope']);
  expect(told.class.entries).toBe(course.class.entries);
  expect(told.class.legs).toHaveLength(2);
  expect(plain(told.leads)).toEqual([]);
});

test('ride says which obstacle to shorten first when the class is too long', async () => {
  const course = smallCourse();
  const entry = { ...course.class, entries: 70, allotted: 3600 };
  const { out } = await runCli('ride', courseFile({ ...course, class: entry }));
  expect(out).toMatch(/The class: 70 entries, 2 drags, .* over 1 h 00 min\. To shorten first: number \d/);
});

test('ride says which hoof comes down on which pole', async () => {
  const { out } = await runCli('ride', courseFile(smallCourse({ gap: 1.3716 })));
  expect(out).toMatch(
    /Number 1: at a jog the (left|right) (hind|fore) comes down on run-1\/pole-\d, \d+ times in 100\./,
  );
});

test('ride prints legs and gaps in the unit of the course', async () => {
  const { code, out } = await runCli('ride', courseFile(smallCourse({ gap: 1.3716 })));
  expect(code).toBe(0);
  expect(out).toContain('Larkhollow Fairground: practice: ');
  expect(out).toMatch(/ 1 {2}Jog-overs {2}over the poles/);
  expect(out).toContain('4\' 6"');
  expect(out).toContain('does not fit');
});
