import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readCourse } from '../../src/core/files/read.ts';
import { courseFile, runCli, scratchFolder, smallCourse } from './run-cli.ts';

const FILE = 'seeds/starters/larkhollow-open.course.json';

/** Twelve entries; Wren Halden has three horses. */
const TABLE = [
  'Number,Rider,Horse',
  ...['Wren Halden', 'Oda Fenn', 'Ines Marrow', 'Wren Halden', 'Tamsin Roe', 'Piet Aldous'].map(
    (rider, i) => `${101 + i},${rider},Horse ${i + 1}`,
  ),
  ...['Ruth Penhale', 'Wren Halden', 'Bo Calder', 'Edda Quist', 'Sol Varga', 'Nell Ashby'].map(
    (rider, i) => `${107 + i},${rider},Horse ${i + 7}`,
  ),
].join('\n');

function tableFile(text: string): string {
  const path = join(scratchFolder(), 'entries.csv');
  writeFileSync(path, text);
  return path;
}

const LIST = tableFile(TABLE);
const document = async (...argv: string[]) => JSON.parse((await runCli('go', FILE, ...argv, '--json')).out);
const goes = (told: { rows: { kind: string; from: number; entry: { number: string; rider: string } }[] }) =>
  told.rows.filter(({ kind }) => kind === 'go');

describe('go', () => {
  test('prints the order and about when each goes', async () => {
    const { code, out, err } = await runCli('go', FILE, '--entries', LIST, '--starts', '9:30 am');
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Open Trail: 12 entries, \d+ min \d\d s, \d min \d\d s a go\n/);
    expect(out).toMatch(/\n *9:30 am +1 +101 +Wren Halden +Horse 1\n/);
    expect(out).toContain('Times are estimates.');
  });

  test('draws the same order for the same number, and keeps a rider’s goes apart', async () => {
    const [a, b, c] = await Promise.all(
      ['7', '7', '8'].map((seed) => document('--entries', LIST, '--draw', seed, '--between', '4')),
    );
    expect(goes(a)).toEqual(goes(b));
    expect(goes(a)).not.toEqual(goes(c));
    const own = goes(a).flatMap(({ entry }, i) => (entry.rider === 'Wren Halden' ? [i] : []));
    expect(own.length).toBe(3);
    for (const [i, turn] of own.slice(1).entries()) expect(turn - (own[i] ?? 0)).toBeGreaterThan(4);
    expect(a.drawn).toEqual({ seed: 7, between: 4 });
  });

  test('says when riders cannot be as far apart as wanted', async () => {
    const { out } = await runCli('go', FILE, '--entries', LIST, '--draw', '7', '--between', '9');
    expect(out).toContain(
      'Drawn with number 7, with 4 goes or more between two of one rider: more than 4 cannot be, and 9 were wanted.',
    );
  });

  test('moves an entry and all after it by the minutes it is late, and closes up for a scratch', async () => {
    const [plain, late, scratched] = await Promise.all([
      document('--entries', LIST),
      document('--entries', LIST, '--late', '5@106'),
      document('--entries', LIST, '--scratch', '102'),
    ]);
    expect(goes(late).map(({ from }, i) => Math.round(from - (goes(plain)[i]?.from ?? 0)))).toEqual(
      Array.from({ length: 12 }, (_, i) => (i < 5 ? 0 : 300)),
    );
    expect(goes(scratched).map(({ entry }) => entry.number)).not.toContain('102');
    expect(goes(scratched)[1]?.from).toBe(goes(plain)[1]?.from);
  });

  test('has as many goes without names where only their number is known', async () => {
    expect(goes(await document()).length).toBe(20);
  });

  test('saves the course with its list, and does not write over another file', async () => {
    const path = join(scratchFolder(), 'listed.course.json');
    const { code } = await runCli('go', FILE, '--entries', LIST, '--draw', '7', '--save', path);
    expect(code).toBe(0);
    const read = readCourse(readFileSync(path, 'utf8'));
    expect(read.kind === 'read' && read.course.class.list?.length).toBe(12);
    const again = await runCli('go', FILE, '--save', path);
    expect([again.code, again.err]).toEqual([2, `--save: ${path} is there already. Name another file.\n`]);
    expect(existsSync(path)).toBe(true);
    const { out } = await runCli('go', path);
    expect(out).toContain('Drawn with number 7');
  });

  test('tells line by line what could not be read, and goes on with the rest', async () => {
    const bad = tableFile('Number,Rider\n1,Wren\n2,"Oda\nabc,Ines\n1,Bo');
    const { code, out, err } = await runCli('go', FILE, '--entries', bad);
    expect(code).toBe(0);
    expect(err).toContain(`${bad}, line 3: A quotation mark is opened and not closed`);
    expect(err).toContain(`${bad}, line 4: “abc” is no number as it is worn`);
    expect(err).toContain(`${bad}: 2 entries read; 2 lines could not be read.`);
    expect(out).toContain('Number 1 is worn by 2 entries');
  });

  test.each([
    [['--late', '5@999', '--entries', LIST], '--late: nobody has the number 999.'],
    [['--late', 'soon', '--entries', LIST], '--late soon: write minutes and a number, such as 5@112.'],
    [['--scratch', '1'], '--scratch: only the number of entries is known. Give the list with --entries.'],
    [['--draw', '7'], '--draw: there is no list to draw from. Give it with --entries.'],
    [['--draw', '1.5', '--entries', LIST], '--draw 1.5: a whole number from 0 to 4294967295 would be right.'],
    [['--between', '3'], '--between wants --draw: it is about the draw.'],
    [['--entries', 'no-such.csv'], 'There is no file no-such.csv.'],
    [['--entries', tableFile('\n')], 'has no entry that could be read.'],
    [['--starts', '25:00'], '--starts: A day has no hour 25.'],
  ])('refuses %j', async (argv, says) => {
    const { code, err } = await runCli('go', FILE, ...argv);
    expect(code).toBe(2);
    expect(err).toContain(says);
  });

  test('refuses a course without entries', async () => {
    const { code, err } = await runCli('go', courseFile(smallCourse()));
    expect([code, err.includes('has no entries. Give them with --entries')]).toEqual([2, true]);
  });
});
