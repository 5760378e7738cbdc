/**
 * Text on paper: its width, its line breaks, and which signs can be printed. Measured from a table of the printing
 * font, so that PDF, SVG and the screen break lines alike. Kerning is left out: it only makes text narrower.
 */
import inter from '../../assets/fonts/inter-widths.json' with { type: 'json' };
import noto from '../../assets/fonts/symbol-widths.json' with { type: 'json' };
import type { Mark } from '../core/plane/mark.ts';
import type { Bounds } from '../core/plane/ring.ts';

export type FontWeight = 'regular' | 'bold';
export type WordsMark = Extract<Mark<'paper'>, { kind: 'words' }>;

/** How high a capital stands above the baseline, and how far letters reach below it, as parts of the em. */
export const CAP_HEIGHT = inter.capHeight / inter.em;
/** The deepest descender of the letters in use. From the glyph outlines of Inter: g, j, p, q, y reach 0.2 em. */
export const DESCENT = 0.21;
/** Brackets and accents on small letters stand a little higher than capitals. */
export const ASCENT = 0.77;
/** Nothing on a sheet is set smaller, mm: 9 points, which reads at arm’s length. */
export const SMALLEST_FONT_SIZE = 3.2;
/** Room between letters and the edge of the box behind them, mm. */
export const BOX_PADDING = 0.5;

/** The advances of a font by code point, in ems. */
function tableOf(runs: readonly (readonly number[])[], em: number): ReadonlyMap<number, number> {
  const widths = new Map<number, number>();
  for (const [first = 0, ...advances] of runs) {
    advances.forEach((advance, index) => {
      widths.set(first + index, advance / em);
    });
  }
  return widths;
}

const WIDTHS: Readonly<Record<FontWeight, ReadonlyMap<number, number>>> = {
  regular: tableOf(inter.regular, inter.em),
  bold: tableOf(inter.bold, inter.em),
};
/** The signs that only the second font has, in one weight. */
const SYMBOL_WIDTHS = tableOf(noto.symbols, noto.em);
/** Of a sign that no font has. */
const UNKNOWN_WIDTH = 0.6;

/** A font of the sheets: letters, or the signs that they lack. */
export type FontFace = 'letters' | 'symbols';

/** Signs that the font lacks and that have a good plain spelling. */
const SPELLINGS: Readonly<Record<string, string>> = {
  '∠': 'angle ',
  '⟂': 'square to ',
  '∥': 'parallel to ',
  '\t': ' ',
  '\n': ' ',
  '\r': ' ',
};

/** The text with every sign that cannot be printed replaced, and what stands for each: the sign, then its replacement. */
export interface Printable {
  readonly text: string;
  readonly replaced: ReadonlyMap<string, string>;
}

function isLetter(code: number): boolean {
  return WIDTHS.regular.has(code) && WIDTHS.bold.has(code) && code >= 32;
}

function hasGlyph(code: number): boolean {
  return isLetter(code) || SYMBOL_WIDTHS.has(code);
}

/** Pictures, variation selectors and invisible controls say nothing in print and are left out. */
const SILENT = /[\p{Extended_Pictographic}\p{Cf}\p{Cc}\p{Mn}\u{1F1E6}-\u{1F1FF}\u{1F3FB}-\u{1F3FF}]/u;

function replacement(sign: string): string {
  const spelling = SPELLINGS[sign];
  if (spelling !== undefined) return spelling;
  const bare = [...sign.normalize('NFKD')].filter((part) => hasGlyph(part.codePointAt(0) ?? 0)).join('');
  if (bare.trim() !== '') return bare;
  return SILENT.test(sign) ? '' : '?';
}

/** A text as it is printed. Spaces of other kinds, and what is invisible, are not counted as replaced. */
export function printable(text: string): Printable {
  const replaced = new Map<string, string>();
  let out = '';
  for (const sign of text.normalize('NFC')) {
    if (hasGlyph(sign.codePointAt(0) ?? 0)) {
      out += sign;
      continue;
    }
    const instead = replacement(sign);
    out += instead;
    if (/\s/.test(sign) || (instead === '' && !/\p{Extended_Pictographic}/u.test(sign))) continue;
    replaced.set(sign, instead.trim());
  }
  return { text: out, replaced };
}

/** A printable text in the stretches that one font has. */
export function faceRuns(text: string): readonly { readonly face: FontFace; readonly text: string }[] {
  const runs: { face: FontFace; text: string }[] = [];
  for (const sign of text) {
    const face = isLetter(sign.codePointAt(0) ?? 0) ? 'letters' : 'symbols';
    const last = runs.at(-1);
    if (last?.face === face) last.text += sign;
    else runs.push({ face, text: sign });
  }
  return runs;
}

/** The advance of a sign, in ems. */
function advance(sign: string, weight: FontWeight): number {
  const code = sign.codePointAt(0) ?? 0;
  return WIDTHS[weight].get(code) ?? SYMBOL_WIDTHS.get(code) ?? UNKNOWN_WIDTH;
}

/** Width of a text in the unit of `size`, the letter height (em). */
export function textWidth(text: string, size: number, weight: FontWeight = 'regular'): number {
  let sum = 0;
  for (const sign of text) sum += advance(sign, weight);
  return sum * size;
}

export interface TextStyle {
  readonly size: number;
  readonly weight?: FontWeight;
}

/** The pieces into which a word falls that is wider than the column. */
function brokenWord(word: string, width: number, { size, weight = 'regular' }: TextStyle): string[] {
  const parts: string[] = [];
  let part = '';
  let used = 0;
  for (const sign of word) {
    const own = advance(sign, weight);
    if (part !== '' && (used + own) * size > width) {
      parts.push(part);
      part = '';
      used = 0;
    }
    part += sign;
    used += own;
  }
  return [...parts, part];
}

/** The text as lines no wider than `width`; at least one. A word that is too wide alone is broken. */
export function wrappedLines(text: string, width: number, style: TextStyle): readonly string[] {
  const lines: string[] = [];
  const { size, weight } = style;
  const space = textWidth(' ', size, weight);
  let line = '';
  let used = 0;
  // Not at the no-break space: what it joins stays together.
  for (const word of text.split(/[ \n\t]+/).filter((each) => each !== '')) {
    const own = textWidth(word, size, weight);
    const longer = line === '' ? own : used + space + own;
    if (longer <= width) {
      line = line === '' ? word : `${line} ${word}`;
      used = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const parts = brokenWord(word, width, style);
    lines.push(...parts.slice(0, -1));
    line = parts.at(-1) ?? '';
    used = textWidth(line, size, weight);
  }
  return line === '' && lines.length > 0 ? lines : [...lines, line];
}

/** The text cut to one line with an ellipsis where it is too wide. */
export function truncatedText(text: string, width: number, { size, weight = 'regular' }: TextStyle): string {
  if (textWidth(text, size, weight) <= width) return text;
  const room = width / size - advance('…', weight);
  let cut = '';
  let whole = '';
  let used = 0;
  for (const sign of text) {
    used += advance(sign, weight);
    whole += sign;
    // Spaces before the ellipsis are dropped, so that one does not end the line.
    if (sign.trim() === '') continue;
    if (used > room) break;
    cut = whole;
  }
  return `${cut}…`;
}

/** The text in at most so many lines: what is left over is cut from the last, with an ellipsis. */
export function fewLines(text: string, width: number, style: TextStyle & { readonly most: number }): readonly string[] {
  const lines = wrappedLines(text, width, style);
  if (lines.length <= style.most) return lines;
  const last = `${lines[style.most - 1]} ${lines[style.most]}`;
  return [...lines.slice(0, style.most - 1), truncatedText(last, width, style)];
}

/** Where on the paper the letters of a mark stand, y down. `at` is on the baseline. */
export function wordsBounds(mark: WordsMark): Bounds {
  const width = textWidth(mark.text, mark.size, mark.weight);
  const before = mark.align === 'start' ? 0 : mark.align === 'middle' ? width / 2 : width;
  const minX = mark.at.x - before;
  return { minX, maxX: minX + width, minY: mark.at.y - ASCENT * mark.size, maxY: mark.at.y + DESCENT * mark.size };
}

/** Half the size of the disc or box behind letters. */
export function backingRadius(mark: WordsMark): number {
  const width = textWidth(mark.text, mark.size, mark.weight);
  return Math.max(0.84 * mark.size, Math.hypot(width / 2, (CAP_HEIGHT * mark.size) / 2) + 0.16 * mark.size);
}
