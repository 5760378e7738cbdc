import { describe, expect, test } from 'vitest';
import { textWidth } from '../../src/sheets/lettering.ts';
import { LINE_STYLES } from '../../src/sheets/line-styles.ts';
import type { Page } from '../../src/sheets/sheet.ts';
import { svg } from '../../src/sheets/svg.ts';

function page(marks: Page['marks']): Page {
  return { width: 100, height: 50, marks, about: 'A pole & a “box” <here>' };
}

describe('the SVG of a page', () => {
  test('is as large as the paper and says what it shows', () => {
    const text = svg(page([]));
    expect(text).toContain('width="100mm" height="50mm" viewBox="0 0 100 50"');
    expect(text).toContain('<title>A pole &amp; a “box” &lt;here&gt;</title>');
  });

  test('carries the faces of its letters where they are given', () => {
    const faces = '@font-face{font-family:Inter;src:url(data:font/woff2;base64,AA==)}';
    expect(svg(page([]), faces)).toContain(`<style>${faces}</style>`);
    expect(svg(page([]))).not.toContain('<style>');
  });

  test('inks each kind of mark with the look of its ink', () => {
    const text = svg(
      page([
        {
          kind: 'line',
          ink: 'jog',
          points: [
            { x: 1, y: 2 },
            { x: 30, y: 2.12345 },
          ],
        },
        {
          kind: 'area',
          ink: 'timber',
          ring: [
            { x: 0, y: 0 },
            { x: 4, y: 0 },
            { x: 4, y: 1 },
          ],
        },
        { kind: 'disc', ink: 'outline', at: { x: 5, y: 6 }, radius: 2, fill: 'rim' },
      ]),
    );
    expect(text).toContain(
      `<path d="M1 2L30 2.123" fill="none" stroke="#000000" stroke-width="${LINE_STYLES.jog.width}"`,
    );
    expect(text).toContain(`stroke-dasharray="${LINE_STYLES.jog.dash?.join(' ')}"`);
    expect(text).toContain('<path d="M0 0L4 0L4 1Z" fill="#ffffff"/>');
    expect(text).toContain('<circle cx="5" cy="6" r="2" fill="none"');
  });

  test('names the second font for the signs that only it has, and for nothing else', () => {
    const words = {
      kind: 'words',
      at: { x: 1, y: 9 },
      text: 'Call ☎ 12',
      size: 4,
      ink: 'words',
      align: 'start',
    } as const;
    const texts = [...svg(page([words])).matchAll(/<text x="([\d.]+)" [^>]*>([^<]*)<\/text>/g)];
    const width = (text: string) => textWidth(text, 4);
    expect(texts.map(([, x, text]) => [Number(x), text])).toEqual([
      [1, 'Call'],
      [expect.closeTo(1 + width('Call '), 3), '☎'],
      [expect.closeTo(1 + width('Call ☎ '), 3), '12'],
    ]);
    expect(texts.map(([element]) => element.includes('Noto Sans Symbols 2'))).toEqual([false, true, false]);
    const middle = svg(page([{ ...words, at: { x: 50, y: 9 }, align: 'middle' }]));
    expect(middle).toContain(`<text x="${Math.round(1000 * (50 - width(words.text) / 2)) / 1000}"`);
    expect(svg(page([{ ...words, text: 'Call 12' }]))).not.toContain('Noto');
  });

  test('prints < and & as letters, and numbers on a white disc', () => {
    const at = { x: 10, y: 10 };
    const text = svg(
      page([{ kind: 'words', at, text: '<&>', size: 4, ink: 'words', align: 'middle', backing: 'disc' }]),
    );
    expect(text).toContain('&lt;&amp;&gt;</text>');
    expect(text).toMatch(/<circle cx="10" [^>]*fill="#ffffff" stroke="#000000"/);
  });
});

describe('ink on paper', () => {
  test('tells every two ways of going apart without colour', () => {
    const ways = ['walk', 'jog', 'lope', 'back', 'side-pass', 'work'] as const;
    const looks = ways.map((ink) => {
      const { dash, cap, width } = LINE_STYLES[ink];
      return `${dash?.join(' ') ?? 'solid'} ${cap} ${width > 1 ? 'wide' : 'thin'}`;
    });
    expect(new Set(looks).size).toBe(ways.length);
  });

  test('is grey or black or white', () => {
    for (const { stroke, fill } of Object.values(LINE_STYLES)) {
      for (const colour of [stroke, fill]) expect(colour).toMatch(/^#([0-9a-f]{2})\1\1$/);
    }
  });

  test('never strokes a line of travel too pale or too thin for a copier', () => {
    for (const ink of ['walk', 'jog', 'lope', 'back', 'side-pass', 'work', 'rail'] as const) {
      expect(LINE_STYLES[ink].stroke).toBe('#000000');
      expect(LINE_STYLES[ink].width).toBeGreaterThanOrEqual(0.35);
    }
  });
});
