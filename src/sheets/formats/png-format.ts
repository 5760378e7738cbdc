import { pageFileName } from '../../core/text/file-name.ts';
import type { Page } from '../sheet.ts';
import { askedPages } from './asked-pages.ts';
import type { ExportedFile, ExportFormat } from './format.ts';
import { pageFacts } from './page-facts.ts';
import { dotsRefusal, painter } from './picture.ts';

/** A picture of dots for each page, in its size on paper. */
export const pngFormat: ExportFormat = {
  id: 'png',
  title: 'PNG',
  ending: 'png',
  about: 'sheets',
  async write({ course, sheets, dpi }, resources, { step, signal }) {
    const pages: { readonly page: Page; readonly name: string; readonly facts: ReturnType<typeof pageFacts> }[] = [];
    for (const asked of sheets) {
      await step(0, sheets.length);
      signal?.throwIfAborted();
      const drawn = askedPages(course, asked);
      if (drawn.kind === 'too-big') return drawn;
      const of = drawn.pages.length;
      for (const [i, page] of drawn.pages.entries()) {
        const name = pageFileName(course.title, asked.sheet.id, { page: i + 1, of, ending: 'png' });
        pages.push({ page, name, facts: pageFacts(drawn, i) });
      }
    }
    const refusal = dotsRefusal(
      pages.map(({ page }) => page),
      dpi,
    );
    if (refusal !== undefined) return refusal;
    const { png } = await painter(resources);
    const files: ExportedFile[] = [];
    for (const [done, { page, name, facts }] of pages.entries()) {
      await step(done, pages.length);
      signal?.throwIfAborted();
      files.push({ name, type: 'image/png', bytes: png(page, dpi), ...facts });
    }
    return files;
  },
};
