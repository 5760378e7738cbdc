import type { Pages } from '../sheet.ts';
import type { ExportedFile } from './format.ts';

/** What is told of the file of one page: the scale of the drawing, and of all pages once which signs were replaced. */
export function pageFacts(
  { drawing, substitutions }: Pages,
  index: number,
): Pick<ExportedFile, 'pages' | 'scale' | 'notices'> {
  return {
    pages: 1,
    ...(drawing === undefined || index > 0 ? {} : { scale: drawing.scale }),
    ...(substitutions.length === 0 || index > 0 ? {} : { notices: substitutions }),
  };
}
