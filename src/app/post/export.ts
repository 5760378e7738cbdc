import { sheetFileName } from '../../core/text/file-name.ts';
import type { Pages } from '../../sheets/sheet.ts';
import { postWords } from '../../words/post.ts';
import { terms } from '../../words/terms.ts';
import { saveDownload } from '../file/download.ts';

/** Writes pages as a PDF and offers it as a download; returns a sentence about what was written. */
export async function exportPages(
  drawn: Pages,
  { course, sheet }: { readonly course: string; readonly sheet: string },
) {
  // The writer and its fonts are large, and only needed here.
  const [{ pdf }, regular, bold, symbols] = await Promise.all([
    import('../../sheets/pdf.ts'),
    import('@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url').then(({ default: url }) => bytesOf(url)),
    import('@expo-google-fonts/inter/700Bold/Inter_700Bold.ttf?url').then(({ default: url }) => bytesOf(url)),
    import('@expo-google-fonts/noto-sans-symbols-2/400Regular/NotoSansSymbols2_400Regular.ttf?url').then(
      ({ default: url }) => bytesOf(url),
    ),
  ]);
  const bytes = await pdf(drawn, { regular, bold, symbols });
  const name = sheetFileName(course, sheet, 'pdf');
  saveDownload(new Blob([new Uint8Array(bytes)], { type: 'application/pdf' }), name);
  const pages = terms.pages(drawn.pages.length);
  if (drawn.drawing === undefined) return `${name}, ${pages}.`;
  return postWords.exported(name, pages, drawn.drawing.scale);
}

async function bytesOf(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`the printing font did not load (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}
