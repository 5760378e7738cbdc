import { survey } from '../../core/survey.ts';
import { pageFileName } from '../../core/text/file-name.ts';
import { faceRules } from '../faces.ts';
import { svg } from '../svg.ts';
import type { ExportedFile, ExportFormat } from './format.ts';

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
    for (const [done, { sheet, options }] of sheets.entries()) {
      await step(done, sheets.length);
      signal?.throwIfAborted();
      const drawn = sheet.draw(survey(course), options);
      if (drawn.kind === 'too-big') return drawn;
      for (const [i, page] of drawn.pages.entries()) {
        const name = pageFileName(course.title, sheet.id, { page: i + 1, of: drawn.pages.length, ending: 'svg' });
        files.push({ name, type: 'image/svg+xml', bytes: writer.encode(svg(page, faces)) });
      }
    }
    return files;
  },
};
