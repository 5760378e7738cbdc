import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { currentLayout } from '../../src/core/course/course.ts';
import { readCourse } from '../../src/core/files/read.ts';
import { INCH } from '../../src/core/measure/quantity.ts';
import { courseFile, runCli, scratchFolder, smallCourse } from './run-cli.ts';

const course = courseFile(smallCourse());

function readings(text: string, name = 'readings.csv'): string {
  const path = join(scratchFolder(), name);
  writeFileSync(path, text);
  return path;
}

const asbuilt = (text: string, ...more: string[]) => runCli('asbuilt', course, '--readings', readings(text), ...more);

/** The jog-overs, each gap in the middle and at both ends, and over one pole; the third pole so many inches towards the fourth. */
const TAPED = (three: number) => {
  const gap = (a: number, b: number, inches: number) =>
    ['middle', 'at 0.1', 'at 0.9'].map((at) => `gap,run-1/pole-${a} ${at},run-1/pole-${b} ${at},${inches} in`);
  const over = (a: number, b: number, inches: number) =>
    ['at 0', 'at 1'].map((at) => `gap,run-1/pole-${a} ${at},run-1/pole-${b} ${at},${inches} in`);
  return [
    'kind,from,to,reads',
    ...gap(1, 2, 36),
    ...gap(2, 3, 36 + three),
    ...gap(3, 4, 36 - three),
    ...over(1, 3, 76 + three),
    ...over(2, 4, 76),
  ];
};

describe('asbuilt', () => {
  test('says that what lies as drawn needs no mending', async () => {
    const { code, out, err } = await asbuilt(TAPED(0).join('\n'));
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('Larkhollow Fairground: practice, Layout 1: 4 pieces by 13 readings\n');
    expect(out).toMatch(/No reading is suspected \(\|w\| up to \d\.\d\)\./);
    expect(out).toMatch(/run-1\/pole-\d\s+\S there\s+\S there\s+held/);
    expect(out).toContain('Every gap that was taped lies in its band: nothing has to be moved.');
  });

  test('tells where a pole lies, the gaps beside it, the fault and the move', async () => {
    const { code, out } = await asbuilt(TAPED(3).join('\n'));
    expect(code).toBe(1);
    expect(out).toMatch(/run-1\/pole-3\s+\S 3" E\s+\S 3" E\s+open\s+±0\.\d in/);
    expect(out).toMatch(/run-1\/pole-3 to run-1\/pole-4\s+jog\s+3'\s+2' 9"\s+±0\.\d in\s+3' to 3' 6"\s+3" short/);
    expect(out).toContain('MUST  1: Gap 3 of the set of jog-overs (obstacle 1) is 2\' 9"');
    expect(out).toContain('1. Move pole 3 of the set of jog-overs (obstacle 1) 3" towards pole 2, both ends alike.');
  });

  test('names the reading that is wrong by its line, and what it should have been', async () => {
    const lines = TAPED(0);
    lines[5] = 'gap,run-1/pole-2 at 0.1,run-1/pole-3 at 0.1,42 in';
    const { code, out } = await asbuilt(lines.join('\n'));
    expect(code).toBe(0);
    expect(out).toMatch(
      /Line 6 is likely wrong and was left out: the gap from pole 2 .* reads 3' 6"; the others make it 3'\./,
    );
    expect(out).toContain('nothing has to be moved');
  });

  test('says where nothing but the drawing tells which of two is wrong', async () => {
    const twice = ['kind,from,to,reads', 'gap,run-1/pole-1,run-1/pole-2,3ft', 'gap,run-1/pole-1,run-1/pole-2,42in'];
    const { out } = await asbuilt(twice.join('\n'));
    expect(out).toContain('One of lines 2 and 3 is likely wrong, and the others do not tell which: tape them again.');
    expect(out).toContain('By the drawing it is line 3, which was left out');
  });

  test('says which readings nothing controls', async () => {
    const { out } = await asbuilt('kind,from,to,reads\ngap,run-1/pole-1,run-1/pole-2,3ft');
    expect(out).toContain(
      'Not controlled, so that an error would not show; tape something more between these pieces: line 2.',
    );
    expect(out).not.toContain('suspected');
  });

  test('keeps the course as built as a layout of its own', async () => {
    const path = join(scratchFolder(), 'new', 'built.course.json');
    const { out } = await asbuilt(TAPED(3).join('\n'), '--save', path);
    expect(out).toContain(`Kept in ${path}: Layout 1, as built.`);
    const read = readCourse(readFileSync(path, 'utf8'));
    if (read.kind !== 'read') throw new Error(read.why);
    expect(read.course.layouts.map(({ title }) => title)).toEqual(['Layout 1', 'Layout 1, as built']);
    const xs = read.course.layouts.map(({ obstacles: [run] }) => run?.pieces[2]?.pose.x ?? 0);
    expect(((xs[1] ?? 0) - (xs[0] ?? 0)) / INCH).toBeCloseTo(3, 1);
    expect(currentLayout(read.course).title).toBe('Layout 1, as built');
  });

  test('prints one JSON document in SI units', async () => {
    const { out } = await asbuilt(TAPED(3).join('\n'), '--json');
    const told = JSON.parse(out);
    expect(told).toMatchObject({
      course: 'Larkhollow Fairground: practice',
      layout: 'layout-1',
      wrong: [],
      undecided: [],
    });
    expect(told.readings).toHaveLength(13);
    expect(told.readings[0]).toMatchObject({ line: 2, kind: 'gap', standing: 'agrees' });
    expect(told.readings[3].read).toBeCloseTo(39 * INCH, 9);
    expect(told.gaps[2].outside).toBeCloseTo(3 * INCH, 3);
    expect(told.gaps[2].band.limit.source).toContain('rule 216');
    expect(told.moves).toHaveLength(1);
    expect(Math.abs(told.moves[0].by)).toBeCloseTo(3 * INCH, 9);
    expect(told.pieces.find(({ key }: { key: string }) => key === 'run-1/pole-3').off[0].x).toBeCloseTo(3 * INCH, 3);
    expect(told.findings.some(({ isNew }: { isNew: boolean }) => isNew)).toBe(true);
  });

  test('reads JSON as well as a table', async () => {
    const list = {
      readings: [{ kind: 'gap', from: 'run-1/pole-1', to: 'run-1/pole-2', reads: 0.9144, sure: '1/4 in' }],
    };
    const path = readings(JSON.stringify(list), 'readings.json');
    const { code, out } = await runCli('asbuilt', course, '--readings', path);
    expect(code).toBe(0);
    expect(out).toContain('2 pieces by 1 reading\n');
  });

  test('a bare number is read in the unit of the course, and that is said', async () => {
    const { err } = await asbuilt('kind,from,to,reads\ngap,run-1/pole-1,run-1/pole-2,3');
    expect(err).toMatch(/line 2: 3 was read as 3 feet\.\n$/);
  });

  test('refuses what it cannot read, each line with its reason', async () => {
    const { code, out, err } = await asbuilt(
      ['kind,from,to,reads', 'gapp,run-1/pole-1,run-1/pole-2,3ft', 'gap,run-1/pole-1,run-9/pole-2,3ft'].join('\n'),
    );
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/line 2: Kind is the text "gapp"; one of gap, between, .* would be right\./);
    expect(err).toMatch(/line 3: The layout has no piece "run-9\/pole-2"\. Write a place such as/);
  });

  test('wants readings, that are there, and a level that is a chance', async () => {
    expect(await runCli('asbuilt', course)).toMatchObject({ code: 2, err: expect.stringContaining('--readings') });
    expect(await runCli('asbuilt', course, '--readings', 'nowhere.csv')).toMatchObject({
      code: 2,
      err: 'There is no file nowhere.csv.\n',
    });
    const { err } = await asbuilt(TAPED(0).join('\n'), '--level', '5 %');
    expect(err).toBe('--level: "5 %" is not a chance. Write one between 0 and 1, such as 0.05.\n');
    const folder = scratchFolder();
    const saved = await asbuilt(TAPED(0).join('\n'), '--save', folder);
    expect(saved).toMatchObject({ code: 2, err: expect.stringContaining('is a folder, not a file') });
    expect(existsSync(folder)).toBe(true);
  });
});
