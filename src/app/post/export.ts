import type { Survey } from '../../core/survey.ts';
import { sheetFileName } from '../../core/text/file-name.ts';
import type { PageOptions } from '../../sheets/sheet.ts';
import { saveDownload } from '../file/download.ts';

/**
 * Writes a sheet as a PDF and offers it as a download; returns a sentence about what was written. The writer is loaded
 * on demand.
 */
export async function exportSheet(id: string, survey: Survey, ask: PageOptions): Promise<string> {
  const [{ sheetById }, { pdf }, regular, bold] = await Promise.all([
    import('../../sheets/sheets.ts'),
    import('../../sheets/pdf.ts'),
    import('@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url').then(({ default: url }) => bytesOf(url)),
    import('@expo-google-fonts/inter/700Bold/Inter_700Bold.ttf?url').then(({ default: url }) => bytesOf(url)),
  ]);
  const drawn = sheetById(id).draw(survey, ask);
  if (drawn.kind === 'too-big') return drawn.why;
  const bytes = await pdf(drawn, { regular, bold });
  const name = sheetFileName(survey.course.title, id);
  saveDownload(new Blob([new Uint8Array(bytes)], { type: 'application/pdf' }), name);
  const pages = drawn.pages.length === 1 ? '1 page' : `${drawn.pages.length} pages`;
  if (drawn.drawing === undefined) return `${name}, ${pages}.`;
  return `${name}, ${pages} at 1:${drawn.drawing.scale}. Print it at 100 %.`;
}

async function bytesOf(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`the printing font did not load (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}
