import { survey } from '../../core/survey.ts';
import { sheetFileName } from '../../core/text/file-name.ts';
import { pdf } from '../pdf.ts';
import type { ExportedFile, ExportFormat } from './format.ts';

/** A PDF for each sheet. */
export const pdfFormat: ExportFormat = {
  id: 'pdf',
  title: 'PDF',
  ending: 'pdf',
  about: 'sheets',
  async write({ course, sheets }, resources, { step, signal }) {
    const files: ExportedFile[] = [];
    const fonts = await resources.fonts();
    for (const [done, { sheet, options }] of sheets.entries()) {
      await step(done, sheets.length);
      signal?.throwIfAborted();
      const pages = sheet.draw(survey(course), options);
      if (pages.kind === 'too-big') return pages;
      const bytes = await pdf(pages, fonts);
      files.push({ name: sheetFileName(course.title, sheet.id, 'pdf'), type: 'application/pdf', bytes });
    }
    return files;
  },
};
