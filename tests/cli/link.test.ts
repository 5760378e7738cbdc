import { expect, test } from 'vitest';
import { courseFromLink } from '../../src/core/files/course-link.ts';
import { courseFile, runCli, smallCourse } from './run-cli.ts';

const BASE = 'https://trail.example/app/';

test('prints an address that opens the course', async () => {
  const { code, out, err } = await runCli('link', courseFile(smallCourse()), '--base', BASE);
  expect([code, err]).toEqual([0, '']);
  expect(out.startsWith(`${BASE}#course=1.`)).toBe(true);
  const reading = courseFromLink(out.trim().slice(BASE.length));
  expect(reading).toMatchObject({ kind: 'read', course: { title: 'Larkhollow Fairground: practice' } });
});

test('says with --json how long it is and how large its code is', async () => {
  const { out } = await runCli('link', courseFile(smallCourse()), '--base', `${BASE}#old`, '--json');
  const told = JSON.parse(out);
  expect(told.link).not.toContain('#old');
  expect(told.signs).toBe(told.link.length);
  expect(told.code.side).toBeGreaterThan(0.35 * told.code.modules);
  expect(told.code.side).toBeLessThanOrEqual(45);
});

test.each([
  ['trail.example', 'not an address'],
  ['ftp://trail.example/', 'begins with ftp:'],
])('refuses the base %s', async (base, why) => {
  expect(await runCli('link', courseFile(smallCourse()), '--base', base)).toMatchObject({
    code: 2,
    err: expect.stringContaining(why),
  });
});
