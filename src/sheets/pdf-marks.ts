/** Paints marks with the writer of PDFs. */
import type PDFDocument from 'pdfkit';
import type { Mark } from '../core/plane/mark.ts';
import { BOX_PADDING, backingRadius, CAP_HEIGHT, faceRuns, printable, wordsBounds } from './lettering.ts';
import { LINE_STYLES, strokeWidth } from './line-styles.ts';

export type Doc = InstanceType<typeof PDFDocument>;

/** PDF points in a millimetre. */
export const POINTS = 72 / 25.4;

/** Without these the font replaces `10x12` by `10×12` and `->` by an arrow. */
const PLAIN = { calt: false, liga: false } as const;
const ON_BASELINE = { lineBreak: false, baseline: 'alphabetic', features: PLAIN as never } as const;

function paintLine(doc: Doc, mark: Extract<Mark<'paper'>, { kind: 'line' }>): void {
  const look = LINE_STYLES[mark.ink];
  const [first, ...rest] = mark.points;
  if (first === undefined) return;
  doc.moveTo(first.x * POINTS, first.y * POINTS);
  for (const at of rest) doc.lineTo(at.x * POINTS, at.y * POINTS);
  doc
    .lineWidth(strokeWidth(mark.ink, mark.width) * POINTS)
    .lineCap(look.cap)
    .lineJoin('round');
  const dashes = mark.dash ?? look.dash;
  if (dashes === undefined) doc.undash();
  // The type knows one dash and one gap only; the writer takes a list.
  else doc.dash(dashes.map((each) => Math.max(each, 0.01) * POINTS) as never, {});
  doc.stroke(look.stroke);
}

function paintArea(doc: Doc, mark: Extract<Mark<'paper'>, { kind: 'area' }>): void {
  const [first, ...rest] = mark.ring;
  if (first === undefined) return;
  doc.moveTo(first.x * POINTS, first.y * POINTS);
  for (const at of rest) doc.lineTo(at.x * POINTS, at.y * POINTS);
  doc.closePath().fill(LINE_STYLES[mark.ink].fill);
}

function paintDisc(doc: Doc, mark: Extract<Mark<'paper'>, { kind: 'disc' }>): void {
  const look = LINE_STYLES[mark.ink];
  doc.circle(mark.at.x * POINTS, mark.at.y * POINTS, mark.radius * POINTS);
  if (mark.fill === 'full') doc.fill(look.fill);
  else
    doc
      .undash()
      .lineWidth(look.width * POINTS)
      .stroke(look.stroke);
}

function paintText(doc: Doc, given: Extract<Mark<'paper'>, { kind: 'words' }>, goesOn: boolean): void {
  const mark = { ...given, text: printable(given.text).text };
  if (mark.text.trim() === '') return;
  const { stroke } = LINE_STYLES[mark.ink];
  const box = wordsBounds(mark);
  if (mark.backing === 'disc') {
    const y = mark.at.y - (CAP_HEIGHT * mark.size) / 2;
    doc.circle(((box.minX + box.maxX) / 2) * POINTS, y * POINTS, backingRadius(mark) * POINTS);
    doc
      .undash()
      .lineWidth(0.35 * POINTS)
      .fillAndStroke('#ffffff', stroke);
  }
  if (mark.backing === 'plate') {
    const width = box.maxX - box.minX + 2 * BOX_PADDING;
    const height = box.maxY - box.minY + BOX_PADDING;
    doc.rect((box.minX - BOX_PADDING) * POINTS, (box.minY - BOX_PADDING / 2) * POINTS, width * POINTS, height * POINTS);
    doc.fill('#ffffff');
  }
  const runs = faceRuns(mark.text).map(({ face, text }) => {
    const font = face === 'symbols' ? face : (mark.weight ?? 'regular');
    return { font, text };
  });
  const size = mark.size * POINTS;
  // Measuring takes as long as writing, so only what does not begin at its place is measured.
  const isPlain = mark.align === 'start' && runs.length === 1;
  const widths = isPlain
    ? [0]
    : runs.map(({ font, text }) => doc.font(font).fontSize(size).widthOfString(text, ON_BASELINE));
  const width = widths.reduce((sum, each) => sum + each, 0);
  const before = mark.align === 'start' ? 0 : mark.align === 'middle' ? width / 2 : width;
  let x = mark.at.x * POINTS - before;
  doc.fillColor(stroke);
  for (const [i, run] of runs.entries()) {
    // A line that goes on ends in a space, or who is read to hears two words as one.
    const text = i === runs.length - 1 && goesOn ? `${run.text} ` : run.text;
    doc
      .font(run.font)
      .fontSize(size)
      .text(text, x, mark.at.y * POINTS, ON_BASELINE);
    x += widths[i] ?? 0;
  }
}

/** A mark on the current page. `goesOn`: words of the same element follow. */
export function paintMark(doc: Doc, mark: Mark<'paper'>, { goesOn }: { readonly goesOn: boolean }): void {
  if (mark.kind === 'line') paintLine(doc, mark);
  else if (mark.kind === 'area') paintArea(doc, mark);
  else if (mark.kind === 'disc') paintDisc(doc, mark);
  else paintText(doc, mark, goesOn);
}
