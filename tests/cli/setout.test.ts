import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import { setOutSchema } from '../../src/core/setout/setout-document.ts';
import { courseFile, runCli, smallCourse } from './run-cli.ts';

const FILE = 'seeds/starters/larkhollow-indoor.course.json';

describe('setout', () => {
  test('prints the parts in the order of walking, each step in sentences, and the sureness of each gap', async () => {
    const { code, out, err } = await runCli('setout', FILE);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Winter indoor trail, .*: set out in 6 parts\n/);
    expect(out).toMatch(/\n {2}2\. {2}Lay pole \d \(/);
    expect(out).toMatch(/\n {6}Tape 1\.00 m from pole \d to pole \d, inside to inside/);
    expect(out).toMatch(/\ngap on the line +as drawn +by these readings +standard error\n/);
    expect(out).toContain('Chock or bed every pole');
  });

  test('in feet for a metric course, by one person, with a board', async () => {
    const { out } = await runCli(
      'setout',
      FILE,
      '--marked',
      'ft',
      '--crew',
      '1',
      '--tape',
      '50ft',
      '--square',
      'board',
    );
    expect(out).toContain("1 tape of 50' or more, marked in feet and inches.");
    expect(out).toContain('A nail and a weight for the zero end of the tape.');
    expect(out).not.toMatch(/\d m\b/);
  });

  test('as one document with --json that follows its schema', async () => {
    const { out } = await runCli('setout', FILE, '--json', '--tapes', '2');
    const told = setOutSchema.parse(JSON.parse(out));
    expect(told.crew).toEqual({ people: 2, tapes: 2, tape: 30, marked: 'm', rightAngle: 'three-four-five' });
    expect(told.parts.flatMap(({ steps }) => steps.map(({ lay }) => lay)).length).toBe(told.pieces.length);
  });

  test.each([
    [['--crew', '5'], '--crew 5: it takes 1 to 4.'],
    [['--tapes', 'two'], '--tapes two: it takes 1 to 3.'],
    [['--tape', 'long'], '--tape long: '],
    [['--tape', '1 m'], 'a tape is between 3 m and 100 m long.'],
    [['--marked', 'yd'], '--marked yd: it takes ft or m.'],
    [['--square', 'eye'], '--square eye: it takes 3-4-5 or board.'],
  ])('refuses %j and says what would be right', async (flags, why) => {
    const { code, err } = await runCli('setout', courseFile(smallCourse()), ...flags);
    expect(code).toBe(2);
    expect(err).toContain(why);
  });

  test('refuses a layout with nothing in it', async () => {
    const { code, err } = await runCli('setout', courseFile(blankCourse()));
    expect(code).toBe(2);
    expect(err).toContain('has nothing to set out: its layout is empty.');
  });
});
