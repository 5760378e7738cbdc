/** Writes pages as a vector PDF. The same pages and fonts give the same bytes, on every machine and on every day. */
import PDFDocument from 'pdfkit';
import { printable } from './lettering.ts';
import { type Doc, POINTS } from './pdf-marks.ts';
import { pageName, taggedPages } from './pdf-tags.ts';
import type { Chapter, Pages } from './sheet.ts';

/** TTF files. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
  /** For the signs that the others lack. */
  readonly symbols: Uint8Array;
}

type Outline = Doc['outline'];

/** Bookmarks, as the chapters are nested. */
function outline(parent: Outline, chapters: readonly Chapter[]): void {
  for (const { title, page, chapters: below = [] } of chapters) {
    // The type does not know these options; without `fit` the writer would go to the page's right edge.
    const options = { pageNumber: page, fit: true, expanded: below.length > 0 } as never;
    outline(parent.addItem(printable(title).text, options), below);
  }
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
      tagged: true,
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
    doc.registerFont('symbols', fonts.symbols as never);
    const tags = taggedPages(doc, pages.chapters ?? []);
    for (const [i, page] of pages.pages.entries()) {
      doc.addPage({ size: [page.width * POINTS, page.height * POINTS], margin: 0 });
      doc.addNamedDestination(pageName(i));
      tags.paint(page, i);
    }
    outline(doc.outline, pages.chapters ?? []);
    doc.end();
  });
}
