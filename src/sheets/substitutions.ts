import { printable } from './lettering.ts';
import type { Page } from './sheet.ts';

/** One sentence for each sign on the pages that had to be replaced for want of a glyph. */
export function substitutionsOf(pages: readonly Page[]): readonly string[] {
  const texts = pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : [])));
  return [...new Set(texts.flatMap((text) => printable(text).substitutions))];
}
