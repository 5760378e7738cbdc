import { csvParseRows } from 'd3-dsv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/core/course/course.ts';
import { cellRows } from '../../../src/core/go/cell-rows.ts';
import { readEntries, readingWords } from '../../../src/core/go/read-entries.ts';
import { writeEntries } from '../../../src/core/go/write-entries.ts';
import '../../property-seed.ts';

const WREN = { number: '104', rider: 'Wren Halden', horse: 'Biscuit' };
const ODA = { number: '7A', rider: 'Oda Fenn', horse: 'Plain Jane' };

describe('entries of a text', () => {
  test.each([
    ['commas with a head', 'Number,Rider,Horse\n104,Wren Halden,Biscuit\n7A,Oda Fenn,Plain Jane'],
    ['semicolons', 'No.;Rider;Horse\r\n104;Wren Halden;Biscuit\r\n7A;Oda Fenn;Plain Jane\r\n'],
    ['tabs', 'Back #\tExhibitor\tName of horse\n104\tWren Halden\tBiscuit\n7A\tOda Fenn\tPlain Jane'],
    ['columns in another order', 'HORSE,back no,rider name\nBiscuit,104,Wren Halden\nPlain Jane,7A,Oda Fenn'],
    ['no head', '104,Wren Halden,Biscuit\n7A,Oda Fenn,Plain Jane'],
    ['no head, the number last', 'Wren Halden,Biscuit,104\nOda Fenn,Plain Jane,7A'],
    ['quoted cells and empty lines', '\n"104","Wren Halden","Biscuit"\n\n7A, Oda  Fenn ,Plain Jane\n\n'],
    [
      'a byte-order mark and a sign for number',
      '\uFEFF#,Rider,Horse\n#104,Wren Halden,Biscuit\n7A,Oda Fenn,Plain Jane',
    ],
  ])('are read from %s', (_, text) => {
    const { entries, refused } = readEntries(text);
    expect(refused).toEqual([]);
    expect(entries).toEqual([WREN, ODA]);
  });

  test('without a head say how they were taken', () => {
    expect(readEntries('104,Wren Halden,Biscuit').notes).toEqual([
      'The first line has no heads of columns: taken as number, rider and horse.',
    ]);
    expect(readEntries('Number,Rider,Horse\n104,Wren Halden,Biscuit').notes).toEqual([]);
  });

  test('of one column are numbers, or names with a number before them', () => {
    expect(readEntries('104\n7A').entries.map(({ number }) => number)).toEqual(['104', '7A']);
    expect(readEntries('104 Wren Halden\nOda Fenn').entries).toEqual([
      { number: '104', rider: 'Wren Halden', horse: '' },
      { number: '', rider: 'Oda Fenn', horse: '' },
    ]);
  });

  test('may hold separators, quotation marks and line ends in quoted cells', () => {
    const { entries } = readEntries('Number;Rider;Horse\n1;"Halden; Wren";"The ""Red"" One"\n2;"Oda\nFenn";Moss');
    expect(entries.map(({ rider, horse }) => [rider, horse])).toEqual([
      ['Halden; Wren', 'The "Red" One'],
      ['Oda Fenn', 'Moss'],
    ]);
  });

  test('know who is scratched and who is late', () => {
    const { entries } = readEntries('Number,Rider,Scratched,Late (min)\n1,Wren,yes,\n2,Oda,,5\n3,Ines,no,2.5 min');
    expect(entries.map(({ scratched, late }) => [scratched, late])).toEqual([
      [true, undefined],
      [undefined, 300],
      [undefined, 150],
    ]);
  });

  test('tell of columns that were not taken, and of numbers that are there twice, by their lines', () => {
    const { notes, entries } = readEntries(
      'Number,Rider,Fee,Horse\n12,Wren,40,Biscuit\n13,Oda,40,Moss\n12,Ines,40,Kit',
    );
    expect(entries.length).toBe(3);
    expect(notes).toEqual([
      'Not taken: “Fee”. The list has number, rider, horse, scratched and minutes late.',
      'Number 12 is there twice: lines 2 and 4.',
    ]);
  });

  test.each([
    ['Number,Rider\n12 or 13,Wren', 2, '“12 or 13” is no number as it is worn; one such as 104 or 12A would be right.'],
    [
      'Number,Rider,Horse\n1,Oda,Moss\n2,Halden, Wren,Biscuit',
      3,
      /more cells than columns \(“Biscuit”\).*quotation marks/,
    ],
    ['1,Oda,Moss\n3,Ines,Kit\n2,Halden, Wren,Biscuit', 3, /more cells than columns/],
    ['Number,Rider\n1,"Wren\n2,Oda', 2, /opened and not closed; one at each end of the cell, or none/],
    ['Number,Rider,Scratched\n1,Wren,perhaps', 2, /“perhaps” under scratched is not clear; yes, or nothing/],
    ['Number,Rider,Late\n1,Wren,soon', 2, /“soon” is no number of minutes late; one from 0 to 1440/],
    [`Number,Rider\n1,${'x'.repeat(121)}`, 2, /A name of 121 letters is too long; at most 120/],
    ['Number,Rider,Fee\n,,40', 2, /no number, rider or horse/],
  ])('refuse a line and say what would be right: %s', (text, line, why) => {
    const reading = readEntries(text);
    expect(reading.refused.map((each) => each.line)).toEqual([line]);
    expect(reading.refused[0]?.why).toMatch(why);
    expect(text).toContain(reading.refused[0]?.text);
  });

  test('go on after a quotation mark that is not closed', () => {
    const { entries, refused } = readEntries('Number,Rider\n1,"Wren\n2,Oda\n3,"Ines"');
    expect(entries.map(({ number }) => number)).toEqual(['2', '3']);
    expect(refused[0]?.text).toBe('1,"Wren');
  });

  test('beyond what a class may have are refused, none is lost', () => {
    const reading = readEntries(Array.from({ length: 503 }, (_, i) => `${i + 1},Rider ${i + 1}`).join('\n'));
    expect([reading.entries.length, reading.refused.length]).toEqual([500, 3]);
    expect(readingWords(reading)).toBe('500 entries read; 3 lines could not be read.');
  });

  test('of nothing are none, and that is said', () => {
    expect(readEntries('  \n\n')).toEqual({ entries: [], refused: [], notes: ['There is no entry in it.'] });
  });

  test('a head alone has no entries', () => {
    expect(readEntries('Number,Rider,Horse').notes).toEqual(['There is no entry in it.']);
  });
});

test('no text throws, and every line is an entry, refused, empty or the head', () => {
  const line = fc.oneof(
    fc.string(),
    fc.constantFrom('Number,Rider,Horse', '12,Wren,Biscuit', '"a', ';;', '\t'),
    fc.tuple(fc.nat(999), fc.string()).map(([number, text]) => `${number},${text}`),
  );
  fc.assert(
    fc.property(fc.array(line, { maxLength: 12 }), (lines) => {
      const { entries, refused } = readEntries(lines.join('\n'));
      expect(entries.length + refused.length).toBeLessThanOrEqual(lines.join('\n').split(/\r\n|\r|\n/).length);
      for (const { why } of refused) expect(why).toMatch(/would be right|quotation marks/);
    }),
  );
});

const cell = fc.string({ unit: fc.constantFrom('a', 'b', ' ', '"', ',', '\n', 'é'), maxLength: 8 });
const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

test('cells are those that another reader of CSV finds', () => {
  fc.assert(
    fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { maxLength: 6 }), (rows) => {
      const text = rows.map((row) => row.map(quoted).join(',')).join('\n');
      const filled = csvParseRows(text).filter((row) => row.some((each) => each.trim() !== ''));
      expect(cellRows(text, ',').rows.map(({ cells }) => cells)).toEqual(filled);
    }),
  );
});

const name = fc
  .string({ unit: fc.constantFrom('a', 'B', '=', '+', '@', '-', '"', ',', ';', 'é', '’', "'"), maxLength: 12 })
  // One apostrophe before a formula is what a safe cell has; a name does not begin so.
  .filter((text) => !/^'+[=+\-@]/.test(text));
const entry = fc.record({ number: fc.nat(9999), rider: name, horse: name, scratched: fc.boolean(), late: fc.nat(60) });

describe('a list as a table', () => {
  const written = (list: readonly Entry[]) => writeEntries(list, () => '9:00 am');

  test('is read again as it was', () => {
    fc.assert(
      fc.property(fc.array(entry, { minLength: 1, maxLength: 8 }), (given) => {
        const list = given.map(
          ({ number, rider, horse, scratched, late }, i): Entry => ({
            ...{ id: `entry-${i}`, number: String(number), rider, horse },
            ...(scratched ? { scratched } : {}),
            ...(late > 0 ? { late: late * 60 } : {}),
          }),
        );
        const { entries, refused } = readEntries(written(list));
        expect(refused).toEqual([]);
        expect(entries).toEqual(list.map(({ id: _, ...rest }) => rest));
      }),
    );
  });

  test('has no cell that a spreadsheet takes for a formula', () => {
    const list = ['=1+1', '+a', '-1+2', '@a'].map(
      (rider, i): Entry => ({ id: `e-${i}`, number: '', rider, horse: rider }),
    );
    const cells = csvParseRows(written(list)).flat();
    expect(cells.filter((each) => /^[=+\-@]/.test(each))).toEqual([]);
    expect(cells).toContain("'=1+1");
  });
});
