/** Writes pages as a vector PDF. The same pages and fonts give the same bytes, on every machine and on every day. */
import PDFDocument from 'pdfkit';
import type { Mark } from '../core/plane/mark.ts';
import { BOX_PADDING, backingRadius, CAP_HEIGHT, printable, wordsBounds } from './lettering.ts';
import { LINE_STYLES, strokeWidth } from './line-styles.ts';
import type { Page, Pages } from './sheet.ts';

/** TTF files. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

type Doc = InstanceType<typeof PDFDocument>;

/** PDF points in a millimetre. */
const POINTS = 72 / 25.4;

/** Without these the font replaces `10x12` by `10×12` and `->` by an arrow. */
const PLAIN = { calt: false, liga: false } as const;

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

function paintText(doc: Doc, given: Extract<Mark<'paper'>, { kind: 'words' }>): void {
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
  doc.font(mark.weight ?? 'regular').fontSize(mark.size * POINTS);
  const options = { lineBreak: false, baseline: 'alphabetic', features: PLAIN as never } as const;
  const width = doc.widthOfString(mark.text, options);
  const before = mark.align === 'start' ? 0 : mark.align === 'middle' ? width / 2 : width;
  doc.fillColor(stroke).text(mark.text, mark.at.x * POINTS - before, mark.at.y * POINTS, options);
}

function paintMark(doc: Doc, mark: Mark<'paper'>): void {
  if (mark.kind === 'line') paintLine(doc, mark);
  else if (mark.kind === 'area') paintArea(doc, mark);
  else if (mark.kind === 'disc') paintDisc(doc, mark);
  else paintText(doc, mark);
}

function paintPage(doc: Doc, page: Page): void {
  doc.addPage({ size: [page.width * POINTS, page.height * POINTS], margin: 0 });
  for (const mark of page.marks) paintMark(doc, mark);
}

/** Midnight UTC of the card's date; of 1 January 2000 while there is none. */
function creationDate(date: string): Date {
  const read = new Date(`${date}T00:00:00Z`);
  return Number.isNaN(read.getTime()) ? new Date('2000-01-01T00:00:00Z') : read;
}

function concatenatedBytes(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

/** The file's bytes. Not compressed, so that a writer elsewhere gives the same. Rejects when a font cannot be read. */
export function pdf(pages: Pages, fonts: Fonts): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const date = creationDate(pages.card.date);
    const doc = new PDFDocument({
      // pdfkit's own fonts are never asked for; its types do not know that null is allowed.
      font: null as never,
      autoFirstPage: false,
      compress: false,
      pdfVersion: '1.7',
      lang: 'en',
      displayTitle: true,
      info: {
        Title: printable(pages.title).text,
        Author: printable(pages.card.author).text,
        Creator: 'Polewright',
        Producer: 'Polewright',
        CreationDate: date,
        ModDate: date,
      },
    });
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('end', () => resolve(concatenatedBytes(chunks)));
    doc.on('error', reject);
    // The types want a Node Buffer or a path; the writer reads any bytes.
    doc.registerFont('regular', fonts.regular as never);
    doc.registerFont('bold', fonts.bold as never);
    for (const page of pages.pages) paintPage(doc, page);
    doc.end();
  });
}
