import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import {
  faceRuns,
  printable,
  textWidth,
  truncatedText,
  wordsBounds,
  wrappedLines,
} from '../../src/sheets/lettering.ts';
import { signNotice } from '../../src/sheets/substitutions.ts';
import { FONTS } from './fonts.ts';

const TEXTS = [
  'Lope on the left lead',
  '6′ 3½″',
  'Łódź → Córdoba',
  'AVATAR To. WAY',
  '1234567890°',
  'f(ij) – “quoted”',
];

describe('letters', () => {
  test.each(TEXTS)('%s is as wide as the font says, without kerning', (text) => {
    const doc = new PDFDocument({ font: null as never });
    doc.registerFont('regular', FONTS.regular as never);
    doc.registerFont('bold', FONTS.bold as never);
    const features = { kern: false, calt: false, liga: false, cpsp: false } as never;
    for (const weight of ['regular', 'bold'] as const) {
      doc.font(weight).fontSize(10);
      expect(textWidth(text, 10, weight)).toBeCloseTo(doc.widthOfString(text, { features }), 2);
    }
  });

  test('a line is never wider than its column, and no word is lost', () => {
    const text = 'Jog up, stop, turn 180° to the left, and back through the L without touching either pole.';
    for (const width of [8, 20, 45, 90]) {
      const lines = wrappedLines(text, width, { size: 4 });
      for (const line of lines) expect(textWidth(line, 4)).toBeLessThanOrEqual(width);
      expect(lines.join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
    }
  });

  test('a no-break space keeps a short word with the one before it', () => {
    const width = textWidth('through the', 4) + 0.1;
    expect(wrappedLines('through the L', width, { size: 4 })).toEqual(['through the', 'L']);
    expect(wrappedLines('through the\u00a0L', width, { size: 4 })).toEqual(['through', 'the\u00a0L']);
  });

  test('an empty text is one empty line', () => {
    expect(wrappedLines('', 50, { size: 4 })).toEqual(['']);
  });

  test('a text too long for one line ends in an ellipsis inside it', () => {
    const cut = truncatedText('Larkhollow Fairground Summer Show', 40, { size: 4 });
    expect(cut).toMatch(/^Larkhollow .*…$/);
    expect(textWidth(cut, 4)).toBeLessThanOrEqual(40);
    expect(truncatedText('Show', 40, { size: 4 })).toBe('Show');
  });

  test.each([
    ['plain words', 'plain words', {}],
    ['5 ft ∠ 30°', '5 ft angle  30°', { '∠': 'angle' }],
    ['one\ntwo', 'one two', {}],
    ['fun 🎉!', 'fun !', { '🎉': '' }],
    ['馬', '?', { 馬: '?' }],
    ['2 ㎝', '2 cm', { '㎝': 'cm' }],
    ['won 🏆 by ♞', 'won 🏆 by ♞', {}],
  ])('%j prints as %j', (text, expected, replaced) => {
    const made = printable(text);
    expect(made.text).toBe(expected);
    expect(Object.fromEntries(made.replaced)).toEqual(replaced);
  });

  test('signs that Inter lacks are set in the font of symbols, as wide as that says', () => {
    expect(faceRuns('won 🏆☎ by ♞')).toEqual([
      { face: 'letters', text: 'won ' },
      { face: 'symbols', text: '🏆☎' },
      { face: 'letters', text: ' by ' },
      { face: 'symbols', text: '♞' },
    ]);
    const doc = new PDFDocument({ font: null as never });
    doc.registerFont('symbols', FONTS.symbols as never);
    doc.font('symbols').fontSize(10);
    expect(textWidth('🏆☎♞', 10)).toBeCloseTo(doc.widthOfString('🏆☎♞'), 2);
  });

  test('one notice tells of all signs that are replaced, and says for which scripts there is no font', () => {
    expect(signNotice(['plain', 'Łódź ♞'])).toEqual([]);
    expect(signNotice(['2 ㎝ 🎉', 'to 馬場', 'מסלול'])).toEqual([
      'Not in the printing fonts: “㎝” is printed as “cm”; “🎉” is left out; “馬”, “場”, “מ”, “ס”, “ל” and “ו” are printed as “?”. ' +
        'There is no font here for Chinese, Japanese and Korean, nor for scripts that run from right to left.',
    ]);
    const [notice = ''] = signNotice([Array.from({ length: 60 }, (_, i) => String.fromCodePoint(0x4e00 + i)).join('')]);
    expect(notice).toMatch(/ and 20 more are printed as/);
  });

  test('a long text is broken and cut as a short one is: once through, whatever its length', () => {
    const long = 'Larkhollow'.repeat(20_000);
    const lines = wrappedLines(long, 40, { size: 4 });
    expect(lines.join('')).toBe(long);
    for (const line of lines.slice(0, -1)) {
      expect(textWidth(line, 4)).toBeLessThanOrEqual(40);
      expect(textWidth(`${line}L`, 4)).toBeGreaterThan(40 - textWidth('w', 4));
    }
    const cut = truncatedText(long, 40, { size: 4 });
    expect(textWidth(cut, 4)).toBeLessThanOrEqual(40);
    expect(truncatedText(`${'Show '.repeat(9)}`, textWidth('Show Show …', 4), { size: 4 })).toBe('Show Show…');
    expect(truncatedText('Show', 0.1, { size: 4 })).toBe('…');
  });

  test('the box of a text stands on its baseline and moves with its alignment', () => {
    const mark = { kind: 'words', at: { x: 50, y: 80 }, text: 'END', size: 4, ink: 'words', align: 'start' } as const;
    const width = textWidth('END', 4);
    expect(wordsBounds(mark)).toMatchObject({ minX: 50, maxX: 50 + width });
    expect(wordsBounds({ ...mark, align: 'middle' }).minX).toBeCloseTo(50 - width / 2, 9);
    expect(wordsBounds({ ...mark, align: 'end' }).maxX).toBeCloseTo(50, 9);
    expect(wordsBounds(mark).minY).toBeLessThan(80 - 2.9);
    expect(wordsBounds(mark).maxY).toBeGreaterThan(80);
  });
});
