import { pageFileName } from '../../core/text/file-name.ts';
import { faceRules } from '../faces.ts';
import { svg } from '../svg.ts';
import { askedPages } from './asked-pages.ts';
import type { ExportedFile, ExportFormat } from './format.ts';
import { pageFacts } from './page-facts.ts';

/** A picture of lines and letters for each page, in millimetres. The letters come with it, so that it prints alike anywhere. */
export const svgFormat: ExportFormat = {
  id: 'svg',
  title: 'SVG',
  ending: 'svg',
  about: 'sheets',
  async write({ course, sheets }, resources, { step, signal }) {
    const files: ExportedFile[] = [];
    const faces = faceRules(await resources.faces());
    const writer = new TextEncoder();
    for (const [done, asked] of sheets.entries()) {
      await step(done, sheets.length);
      signal?.throwIfAborted();
      const drawn = askedPages(course, asked);
      if (drawn.kind === 'too-big') return drawn;
      for (const [i, page] of drawn.pages.entries()) {
        const name = pageFileName(course.title, asked.sheet.id, { page: i + 1, of: drawn.pages.length, ending: 'svg' });
        const bytes = writer.encode(svg(page, faces));
        files.push({ name, type: 'image/svg+xml', bytes, ...pageFacts(drawn, i) });
      }
    }
    return files;
  },
};
