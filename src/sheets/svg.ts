/** Writes a page as SVG: one picture, in millimetres, the same marks as the PDF. */
import type { Mark } from '../core/plane/mark.ts';
import {
  BOX_PADDING,
  backingRadius,
  CAP_HEIGHT,
  type FontFace,
  faceRuns,
  printable,
  textWidth,
  type WordsMark,
  wordsBounds,
} from './lettering.ts';
import { LINE_STYLES, strokeWidth } from './line-styles.ts';
import type { Page } from './sheet.ts';

/** To a thousandth of a millimetre, without trailing zeros. */
function n(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function xmlText(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}

function pathData(points: readonly { readonly x: number; readonly y: number }[]): string {
  return points.map((at) => `${n(at.x)} ${n(at.y)}`).join('L');
}

interface SvgLetters {
  readonly mark: WordsMark;
  readonly face: FontFace;
}

/** Letters of one font as an element. */
function textElement({ mark, face }: SvgLetters): string {
  const { at, text, size, weight, align, ink } = mark;
  const family = face === 'symbols' ? ` font-family="'Noto Sans Symbols 2', sans-serif"` : '';
  const bold = weight === 'bold' && face === 'letters' ? ' font-weight="700"' : '';
  const anchor = align === 'start' ? '' : ` text-anchor="${align}"`;
  // A viewer without the font fits its own letters to the same width, so that nothing can overlap.
  const width = textWidth(text, size, weight);
  const fittedLength = [...text].length > 2 ? ` textLength="${n(width)}" lengthAdjust="spacingAndGlyphs"` : '';
  const { stroke } = LINE_STYLES[ink];
  return `<text x="${n(at.x)}" y="${n(at.y)}" font-size="${n(size)}"${family}${bold}${anchor}${fittedLength} fill="${stroke}">${xmlText(text)}</text>`;
}

/**
 * Words, as an element for each stretch of one font: a viewer that has to find a font for a sign by itself goes on in it
 * with the letters after it.
 */
function lettersElements(mark: WordsMark): string {
  const runs = faceRuns(mark.text);
  const [only] = runs;
  if (only === undefined || runs.length === 1) return textElement({ mark, face: only?.face ?? 'letters' });
  let x = wordsBounds(mark).minX;
  return runs
    .map(({ face, text }) => {
      // The space at the edge of an element is not set, so the words after it have their own place.
      const before = text.length - text.trimStart().length;
      const at = { x: x + textWidth(text.slice(0, before), mark.size, mark.weight), y: mark.at.y };
      x += textWidth(text, mark.size, mark.weight);
      if (text.trim() === '') return '';
      return textElement({ mark: { ...mark, at, text: text.trim(), align: 'start' }, face });
    })
    .join('');
}

function wordsElement(given: WordsMark): string {
  const mark = { ...given, text: printable(given.text).text };
  const { stroke } = LINE_STYLES[mark.ink];
  const letters = lettersElements(mark);
  if (mark.backing === 'disc') {
    const box = wordsBounds(mark);
    const at = { x: (box.minX + box.maxX) / 2, y: mark.at.y - (CAP_HEIGHT * mark.size) / 2 };
    return `<circle cx="${n(at.x)}" cy="${n(at.y)}" r="${n(backingRadius(mark))}" fill="#ffffff" stroke="${stroke}" stroke-width="0.35"/>${letters}`;
  }
  if (mark.backing === 'plate') {
    const box = wordsBounds(mark);
    return `<rect x="${n(box.minX - BOX_PADDING)}" y="${n(box.minY - BOX_PADDING / 2)}" width="${n(box.maxX - box.minX + 2 * BOX_PADDING)}" height="${n(box.maxY - box.minY + BOX_PADDING)}" fill="#ffffff"/>${letters}`;
  }
  return letters;
}

function markElement(mark: Mark<'paper'>): string {
  const look = LINE_STYLES[mark.ink];
  switch (mark.kind) {
    case 'line': {
      const dashes = mark.dash ?? look.dash;
      const dash = dashes === undefined ? '' : ` stroke-dasharray="${dashes.map(n).join(' ')}"`;
      const cap = look.cap === 'butt' ? '' : ` stroke-linecap="${look.cap}"`;
      return `<path d="M${pathData(mark.points)}" fill="none" stroke="${look.stroke}" stroke-width="${n(strokeWidth(mark.ink, mark.width))}"${dash}${cap} stroke-linejoin="round"/>`;
    }
    case 'area':
      return `<path d="M${pathData(mark.ring)}Z" fill="${look.fill}"/>`;
    case 'disc': {
      const paint =
        mark.fill === 'full'
          ? `fill="${look.fill}"`
          : `fill="none" stroke="${look.stroke}" stroke-width="${n(look.width)}"`;
      return `<circle cx="${n(mark.at.x)}" cy="${n(mark.at.y)}" r="${n(mark.radius)}" ${paint}/>`;
    }
    case 'words':
      return wordsElement(mark);
  }
}

/**
 * The page as a complete SVG document whose user unit is one millimetre. `faces` are the @font-face rules of its letters,
 * for a viewer that has not the font.
 */
export function svg(page: Page, faces = ''): string {
  const size = `width="${n(page.width)}mm" height="${n(page.height)}mm" viewBox="0 0 ${n(page.width)} ${n(page.height)}"`;
  const open = `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img" font-family="Inter, 'Helvetica Neue', Arial, sans-serif">`;
  const about = `<title>${xmlText(page.about)}</title>`;
  const style = faces === '' ? '' : `<style>${faces}</style>\n`;
  const paper = `<rect width="100%" height="100%" fill="#ffffff"/>`;
  return `${open}\n${about}\n${style}${paper}\n${page.marks.map(markElement).join('\n')}\n</svg>\n`;
}
