import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
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
    expect(told).toMatchObject({ sheet: 'pattern', pages: 1 });
    expect(told.scale).toBeGreaterThan(1);
    expect(readdirSync(folder)).toHaveLength(1);
  });

  test('writes the same bytes twice', async () => {
    const file = courseFile(smallCourse());
    const [one, two] = [scratchFolder(), scratchFolder()];
    await runCli('post', file, '--out', one);
    await runCli('post', file, '--out', two);
    const [name = ''] = readdirSync(one);
    expect(readFileSync(join(one, name)).equals(readFileSync(join(two, name)))).toBe(true);
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
      [['--out', 'x', '--scale', 'big'], '--scale: "big" is not a scale. Write one such as 1:200 or 200.'],
      [['--out', 'x', '--scale', '1:20'], 'At 1:20 the arena is'],
    ];
    for (const [argv, why] of refusals) {
      const { code, out, err } = await runCli('post', file, ...argv);
      expect([code, out], why).toEqual([2, '']);
      expect(err).toContain(why);
    }
  });
});
