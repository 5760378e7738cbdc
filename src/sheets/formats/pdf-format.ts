import { sheetFileName } from '../../core/text/file-name.ts';
import type { Fonts } from '../pdf.ts';
import type { Pages } from '../sheet.ts';
import { askedPages } from './asked-pages.ts';
import type { ExportedFile, ExportFormat } from './format.ts';

/** Pages as a file that is handed out. */
export async function pdfFile(name: string, pages: Pages, fonts: Fonts): Promise<ExportedFile> {
  // The writer is large: who only lists the formats does not wait for it.
  const { pdf } = await import('../pdf.ts');
  const { drawing, substitutions } = pages;
  return {
    ...{ name, type: 'application/pdf', bytes: await pdf(pages, fonts), pages: pages.pages.length },
    ...(drawing === undefined ? {} : { scale: drawing.scale }),
    ...(substitutions.length === 0 ? {} : { notices: substitutions }),
  };
}

/** A PDF for each sheet. */
export const pdfFormat: ExportFormat = {
  id: 'pdf',
  title: 'PDF',
  ending: 'pdf',
  about: 'sheets',
  async write({ course, sheets }, resources, { step, signal }) {
    const files: ExportedFile[] = [];
    const fonts = await resources.fonts();
    for (const [done, asked] of sheets.entries()) {
      await step(done, sheets.length);
      signal?.throwIfAborted();
      const pages = askedPages(course, asked);
      if (pages.kind === 'too-big') return pages;
      files.push(await pdfFile(sheetFileName(course.title, asked.sheet.id, 'pdf'), pages, fonts));
    }
    return files;
  },
};
