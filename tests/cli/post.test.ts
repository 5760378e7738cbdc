import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Course } from '../../src/core/course/course.ts';
import { EXPORT_FORMATS } from '../../src/sheets/formats/formats.ts';
import { SHEETS } from '../../src/sheets/sheets.ts';
import { courseFile, runCli, scratchFolder, smallCourse } from './run-cli.ts';

describe('post', () => {
  test('writes the pattern as a PDF into a folder that it makes, and leaves nothing else there', async () => {
    const folder = join(scratchFolder(), 'day one', 'sheets');
    const { code, out, err } = await runCli('post', courseFile(smallCourse()), '--out', folder, '--paper', 'a4');
    expect([code, err]).toEqual([0, '']);
    expect(readdirSync(folder)).toEqual(['larkhollow-fairground-practice-pattern.pdf']);
    const path = join(folder, 'larkhollow-fairground-practice-pattern.pdf');
    expect(out).toBe(`${path}\n`);
    expect(readFileSync(path).subarray(0, 5).toString()).toBe('%PDF-');
  });

  test('says with --json what it wrote and to what scale', async () => {
    const folder = scratchFolder();
    const { out } = await runCli('post', courseFile(smallCourse()), '--out', folder, '--json');
    const told = JSON.parse(out);
    expect(told).toMatchObject({ sheets: ['pattern'], notices: [], files: [{ format: 'pdf', pages: 1 }] });
    const [file] = told.files;
    expect(file.scale).toBeGreaterThan(1);
    expect(readFileSync(file.file).length).toBe(file.bytes);
    expect(readdirSync(folder)).toHaveLength(1);
  });

  test('writes several sheets, in their order, each under its own name', async () => {
    const folder = scratchFolder();
    const { code, out } = await runCli('post', courseFile(smallCourse()), '--out', folder, '--sheets', 'ring, pattern');
    expect(code).toBe(0);
    const names = ['larkhollow-fairground-practice-ring.pdf', 'larkhollow-fairground-practice-pattern.pdf'];
    expect(out).toBe(names.map((name) => `${join(folder, name)}\n`).join(''));
    expect(readdirSync(folder)).toEqual(names.toSorted());
  });

  test('writes every format that there is, at once', async () => {
    const folder = scratchFolder();
    const bound = EXPORT_FORMATS.filter(({ binds }) => binds === 'day').map(({ id }) => id);
    const formats = EXPORT_FORMATS.map(({ id }) => id).filter((id) => !bound.includes(id));
    const run = await runCli(
      'post',
      courseFile(smallCourse()),
      '--out',
      folder,
      '--json',
      '--format',
      formats.join(','),
    );
    expect(run.code, run.err).toBe(0);
    const told: { files: { format: string; file: string; bytes: number }[] } = JSON.parse(run.out);
    expect(new Set(told.files.map(({ format }) => format))).toEqual(new Set(formats));
    for (const { file, bytes } of told.files) expect(readFileSync(file).length).toBe(bytes);
  });

  test('binds sheets into one file, of the class or of the day', async () => {
    const folder = scratchFolder();
    const file = courseFile(smallCourse());
    const { out } = await runCli('post', file, '--out', folder, '--sheets', 'pattern,ring', '--together', '--json');
    expect(readdirSync(folder)).toEqual(['larkhollow-fairground-practice-folder.pdf']);
    expect(JSON.parse(out).files[0].pages).toBeGreaterThan(2);
    const none = await runCli('post', file, '--out', folder, '--day');
    expect(none.code).toBe(2);
    expect(none.err).toContain('The course has no classes of a day.');
    const ofDay = 'seeds/starters/larkhollow-day.course.json';
    const day = await runCli('post', ofDay, '--out', folder, '--sheets', 'truck', '--day');
    expect(day.code, day.err).toBe(0);
    expect(readdirSync(folder)).toEqual([
      'larkhollow-a-day-of-trail-day-folder.pdf',
      'larkhollow-fairground-practice-folder.pdf',
    ]);
  });

  test('never writes over a file unasked: nothing is written then, and it says which', async () => {
    const folder = scratchFolder();
    const file = courseFile(smallCourse());
    const path = join(folder, 'larkhollow-fairground-practice-ring.pdf');
    writeFileSync(path, 'mine');
    const { code, out, err } = await runCli('post', file, '--out', folder, '--sheets', 'pattern,ring');
    expect([code, out]).toEqual([2, '']);
    expect(err).toBe(
      `${path} is there already. Nothing was written. Name another folder with --out, or write over with --force.\n`,
    );
    expect(readdirSync(folder)).toEqual(['larkhollow-fairground-practice-ring.pdf']);
    expect(readFileSync(path, 'utf8')).toBe('mine');
    const forced = await runCli('post', file, '--out', folder, '--sheets', 'pattern,ring', '--force');
    expect(forced.code).toBe(0);
    expect(readFileSync(path).subarray(0, 5).toString()).toBe('%PDF-');
    expect(readdirSync(folder)).toHaveLength(2);
  });

  test('draws a sheet by the choices that are given for it', async () => {
    const sheet = SHEETS.find(({ id }) => id === 'judge');
    const option = sheet?.options?.[0];
    const other = option?.choices[1];
    if (sheet === undefined || option === undefined || other === undefined)
      throw new Error('the judge’s card has an option');
    const list = [{ id: 'entry-1', number: '214', rider: 'A. Rider', horse: 'Larkhollow Bay' }];
    const course = { ...smallCourse(), class: { ...smallCourse().class, list } };
    const post = (folder: string, ...rest: string[]) =>
      runCli('post', courseFile(course), '--out', folder, '--sheets', sheet.id, ...rest);
    const [usual, chosen] = [scratchFolder(), scratchFolder()];
    await post(usual);
    const run = await post(chosen, '--option', `${sheet.id}.${option.id}=${other.id}`);
    expect(run.code, run.err).toBe(0);
    const [name = ''] = readdirSync(usual);
    expect(readdirSync(chosen)).toEqual([name]);
    expect(readFileSync(join(chosen, name)).equals(readFileSync(join(usual, name)))).toBe(false);
    const slips: [string, string][] = [
      [`${sheet.id}.${option.id}=nothing`, `There is no choice of ${sheet.id}.${option.id} "nothing".`],
      [`${sheet.id}.nothing=1`, `There is no option of ${sheet.id} "nothing".`],
    ];
    for (const [slip, why] of slips) {
      const { code, err } = await post(chosen, '--option', slip);
      expect(code).toBe(2);
      expect(err).toContain(`--option: ${why}`);
    }
  });

  test('tells of replaced signs in every format of sheets', async () => {
    const file = courseFile({ ...smallCourse(), notes: '2 ㎝' });
    for (const { id } of EXPORT_FORMATS.filter(({ about, binds }) => about === 'sheets' && binds !== 'day')) {
      const { err } = await runCli('post', file, '--out', scratchFolder(), '--format', id);
      expect(err, id).toBe('Not in the printing fonts: “㎝” is printed as “cm”.\n');
    }
  });

  test('tells once of all signs that it had to replace', async () => {
    const course = { ...smallCourse(), notes: '2 ㎝ 馬' };
    const { err } = await runCli('post', courseFile(course), '--out', scratchFolder());
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err).toMatch(/“㎝” is printed as “cm”; “馬” is printed as “\?”/);
  });

  test('writes the same bytes twice', async () => {
    const file = courseFile(smallCourse());
    const [one, two] = [scratchFolder(), scratchFolder()];
    await runCli('post', file, '--out', one);
    await runCli('post', file, '--out', two);
    const [name = ''] = readdirSync(one);
    expect(readFileSync(join(one, name)).equals(readFileSync(join(two, name)))).toBe(true);
  });

  test('warns on stderr of own words that were written before the course was changed, and posts them', async () => {
    const course = smallCourse();
    const [layout] = course.layouts;
    const [leg, ...others] = layout.ride.legs;
    if (leg === undefined) throw new Error('the small course has no leg');
    const own = { ...leg, words: 'Trot the poles.', wordsFor: 'From START, walk over the poles.' };
    const ride = { ...layout.ride, legs: [own, ...others] };
    const stale: Course = { ...course, layouts: [{ ...layout, ride }] };
    const { code, err } = await runCli('post', courseFile(stale), '--out', scratchFolder());
    expect(code).toBe(0);
    expect(err).toBe('Instruction 1 is in the designer’s own words, and the course has changed since.\n');
  });

  test('refuses a folder that cannot be made, a paper, a sheet, a scale, each with its reason', async () => {
    const file = courseFile(smallCourse());
    const inTheWay = join(scratchFolder(), 'file');
    writeFileSync(inTheWay, '');
    const refusals: [string[], string][] = [
      [['--out', join(inTheWay, 'deeper')], 'The folder for the sheets cannot be made.'],
      [['--out', inTheWay], `${inTheWay} is a file, not a folder.`],
      [[], 'post wants --out <folder>.'],
      [
        ['--out', 'x', '--paper', 'a5'],
        '--paper: There is no paper "a5". Did you mean a4? There are: letter, a4, legal.',
      ],
      [['--out', 'x', '--sheet', 'patern'], '--sheet: There is no sheet "patern". Did you mean pattern?'],
      [['--out', 'x', '--sheets', ','], '--sheets names no sheet. There are: pattern,'],
      [['--out', 'x', '--sheets', 'ring', '--sheet', 'ring'], '--sheets and --sheet are the same: give one.'],
      [['--out', 'x', '--format', 'pdff'], '--format: There is no format "pdff". Did you mean pdf?'],
      [['--out', 'x', '--dpi', '0'], '--dpi: "0" is not from 1 to 1200 dots in an inch.'],
      [['--out', 'x', '--option', 'pattern'], 'is no option. Write it as SHEET.OPTION=CHOICE.'],
      [['--out', 'x', '--option', 'ring.a=b'], '--option: There is no sheet asked for "ring". There are: pattern.'],
      [['--out', 'x', '--scale', 'big'], '--scale: "big" is not a scale. Write one such as 1:200 or 200.'],
      [['--out', 'x', '--scale', '1:20'], 'Pattern: At 1:20 the arena is'],
      [['--out', 'x', '--scale', '1:20', '--together'], 'Pattern: At 1:20 the arena is'],
    ];
    for (const [argv, why] of refusals) {
      const { code, out, err } = await runCli('post', file, ...argv);
      expect([code, out], why).toEqual([2, '']);
      expect(err).toContain(why);
    }
  });
});
