import { sheetFileName } from '../../core/text/file-name.ts';
import type { Pages } from '../../sheets/sheet.ts';
import { postWords } from '../../words/post.ts';
import { terms } from '../../words/terms.ts';
import { saveDownload } from '../file/download.ts';
import { printingFonts } from './export-resources.ts';

/** Writes pages as a PDF and offers it as a download; returns a sentence about what was written. */
export async function exportPages(
  drawn: Pages,
  { course, sheet }: { readonly course: string; readonly sheet: string },
) {
  // The writer and its fonts are large, and only needed here.
  const [{ pdf }, fonts] = await Promise.all([import('../../sheets/pdf.ts'), printingFonts()]);
  const bytes = await pdf(drawn, fonts);
  const name = sheetFileName(course, sheet, 'pdf');
  saveDownload(new Blob([new Uint8Array(bytes)], { type: 'application/pdf' }), name);
  const pages = terms.pages(drawn.pages.length);
  if (drawn.drawing === undefined) return `${name}, ${pages}.`;
  return postWords.exported(name, pages, drawn.drawing.scale);
}
