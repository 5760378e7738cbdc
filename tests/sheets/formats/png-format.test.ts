import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { dotsRefusal } from '../../../src/sheets/formats/picture.ts';
import { pngFormat } from '../../../src/sheets/formats/png-format.ts';
import { textWidth } from '../../../src/sheets/lettering.ts';
import { pattern } from '../../../src/sheets/pattern.ts';
import type { Page, Sheet } from '../../../src/sheets/sheet.ts';
import { SEEDS } from '../samples.ts';
import { LETTER, RESOURCES, UNWATCHED } from './resources.ts';

const novice = SEEDS['larkhollow-novice'];
if (novice === undefined) throw new Error('the novice starter is missing');
const course = novice;

async function drawn(sheet: Sheet, dpi: number): Promise<readonly Uint8Array[]> {
  const files = await pngFormat.write({ course, sheets: [{ sheet, options: LETTER }], dpi }, RESOURCES, UNWATCHED);
  if ('kind' in files) throw new Error(files.why);
  return files.map(({ bytes }) => bytes);
}

function page(marks: Page['marks']): Page {
  return { width: 50.8, height: 25.4, marks, about: '' };
}

function sheetOf(marks: Page['marks']): Sheet {
  return {
    id: 'trial',
    title: 'Trial',
    draw: () => ({ kind: 'pages', title: '', pages: [page(marks)], card: { date: '', author: '' }, substitutions: [] }),
  };
}

/** The dots that are darker than the middle grey. */
function darkBox(png: PNG): { minX: number; maxX: number; minY: number; maxY: number } {
  const box = { minX: png.width, maxX: -1, minY: png.height, maxY: -1 };
  for (let y = 0; y < png.height; y += 1) {
    for (let x = 0; x < png.width; x += 1) {
      if ((png.data[4 * (y * png.width + x)] ?? 255) > 127) continue;
      box.minX = Math.min(box.minX, x);
      box.maxX = Math.max(box.maxX, x);
      box.minY = Math.min(box.minY, y);
      box.maxY = Math.max(box.maxY, y);
    }
  }
  return box;
}

describe('a sheet as PNG', () => {
  test('has as many dots as asked for, and says its size on paper', async () => {
    const [bytes] = await drawn(pattern, 100);
    const buffer = Buffer.from(bytes ?? []);
    const png = PNG.sync.read(buffer);
    expect([png.width, png.height].toSorted((a, b) => a - b)).toEqual([850, 1100]);
    const at = buffer.indexOf('pHYs');
    expect(buffer.readUInt32BE(at + 4)).toBe(3937);
    expect(buffer.readUInt32BE(at + 8)).toBe(3937);
    expect(buffer.readUInt8(at + 12)).toBe(1);
  });

  test('is the same bytes each time', async () => {
    expect(await drawn(pattern, 60)).toEqual(await drawn(pattern, 60));
  });

  test('puts a line where it is on the page', async () => {
    const points = [
      { x: 10, y: 5 },
      { x: 40, y: 5 },
      { x: 40, y: 20 },
      { x: 10, y: 20 },
      { x: 10, y: 5 },
    ];
    const [bytes] = await drawn(sheetOf([{ kind: 'line', ink: 'rail', points, width: 1 }]), 254);
    const box = darkBox(PNG.sync.read(Buffer.from(bytes ?? [])));
    // Ten dots in a millimetre; the line is half a millimetre to both sides.
    expect(box).toEqual({ minX: 95, maxX: 404, minY: 45, maxY: 204 });
  });

  test('leaves an x between figures an x', async () => {
    const words = (text: string, x: number) =>
      ({ kind: 'words', at: { x, y: 18 }, text, size: 15, ink: 'words', align: 'start' }) as const;
    const apart = (signs: readonly string[]) =>
      signs.map((sign, i) => words(sign, 5 + textWidth(signs.slice(0, i).join(''), 15)));
    const dots = async (marks: Page['marks']) => {
      const [bytes] = await drawn(sheetOf(marks), 100);
      return [...PNG.sync.read(Buffer.from(bytes ?? [])).data].filter((_, i) => i % 4 === 0);
    };
    const off = (a: readonly number[], b: readonly number[]) =>
      a.filter((dot, i) => Math.abs(dot - (b[i] ?? 0)) > 127).length;
    const written = await dots([words('1x2', 5)]);
    const asLetter = off(written, await dots(apart(['1', 'x', '2'])));
    const asTimes = off(written, await dots(apart(['1', '×', '2'])));
    expect(written.filter((dot) => dot < 127).length).toBeGreaterThan(300);
    expect(asLetter).toBeLessThan(asTimes / 4);
  });
});

test('too many dots are refused with the most that can be drawn, which are not refused', () => {
  const large = { ...page([]), width: 215.9, height: 355.6 };
  expect(dotsRefusal([large], 600)).toBeUndefined();
  const refusal = dotsRefusal([page([]), large], 1200);
  expect(refusal?.why).toBe(
    'At 1200 dots in an inch the page has 171 million dots; 50 million are the most that can be drawn. 648 dots in an inch fit.',
  );
  expect(dotsRefusal([large], refusal?.nearest ?? 0)).toBeUndefined();
  expect(dotsRefusal([large], (refusal?.nearest ?? 0) + 1)).toBeDefined();
});
