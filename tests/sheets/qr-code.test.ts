import jsqr from 'jsqr';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { courseLink } from '../../src/core/files/course-link.ts';
import { painter } from '../../src/sheets/formats/picture.ts';
import { type QrCode, qrCode, qrMarks } from '../../src/sheets/qr-code.ts';
import type { Page } from '../../src/sheets/sheet.ts';
import { RESOURCES } from './formats/resources.ts';
import { SEEDS } from './samples.ts';

const BASE = 'https://trail.example/polewright/';

/** What an independent reader makes of a picture. */
function readBack(bytes: Uint8Array): string | undefined {
  const { data, width, height } = PNG.sync.read(Buffer.from(bytes));
  return jsqr(new Uint8ClampedArray(data), width, height)?.data;
}

function pageOf(code: QrCode, size: number): Page {
  return { width: size + 10, height: size + 10, marks: qrMarks(code, { x: 5, y: 5 }, size), about: '' };
}

describe('the code of a link', () => {
  test.each(Object.entries(SEEDS))(
    'is read back from the picture of a page at its least size: %s',
    async (_, course) => {
      const link = courseLink(course, BASE);
      const code = qrCode(link);
      if (code === undefined) throw new Error('the link does not fit');
      expect(code.side).toBeLessThanOrEqual(45);
      expect(code.side / (code.rows.length + 8)).toBeGreaterThanOrEqual(0.35);
      const { png } = await painter(RESOURCES);
      expect(readBack(png(pageOf(code, code.side), 300))).toBe(link);
    },
  );

  test('is read from a picture of few dots, as a phone takes one from further away', async () => {
    const code = qrCode('https://trail.example/#course=1.abcdefghijklmnopqrstuvwxyz0123456789');
    if (code === undefined) throw new Error('the link does not fit');
    const { png } = await painter(RESOURCES);
    expect(readBack(png(pageOf(code, 30), 120))).toBe(code.text);
  });

  test('has its white inside of its size', () => {
    const code = qrCode('https://trail.example/');
    if (code === undefined) throw new Error('the link does not fit');
    const size = 33;
    const white = (4 * size) / (code.rows.length + 8);
    const xs = qrMarks(code, { x: 10, y: 20 }, size).flatMap((mark) => (mark.kind === 'line' ? mark.points : []));
    expect(Math.min(...xs.map(({ x }) => x))).toBeCloseTo(10 + white, 9);
    expect(Math.max(...xs.map(({ x }) => x))).toBeCloseTo(10 + size - white, 9);
    for (const { y } of xs) {
      expect(y).toBeGreaterThan(20 + white);
      expect(y).toBeLessThan(20 + size - white);
    }
  });

  test('is larger in a link that is longer, and there is none where it would be too fine', () => {
    const sides = [100, 300, 500, 700, 900, 1100, 1250].map((length) => qrCode('x'.repeat(length))?.side ?? Number.NaN);
    expect(sides).toEqual(sides.toSorted((a, b) => a - b));
    expect(qrCode('x'.repeat(1250))).toBeDefined();
    expect(qrCode('x'.repeat(1300))).toBeUndefined();
    expect(qrCode('x'.repeat(5000))).toBeUndefined();
  });
});
