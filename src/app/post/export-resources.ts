import type { ExportResources } from '../../sheets/formats/format.ts';
import type { Fonts } from '../../sheets/pdf.ts';

/** The fonts of a PDF. Rejects when they cannot be fetched. */
export async function printingFonts(): Promise<Fonts> {
  const [regular, bold] = await Promise.all([
    import('@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url').then(({ default: url }) => bytesOf(url)),
    import('@expo-google-fonts/inter/700Bold/Inter_700Bold.ttf?url').then(({ default: url }) => bytesOf(url)),
  ]);
  return { regular, bold };
}

/** What writers need in a browser: fetched from where the app came from. */
export const BROWSER_RESOURCES: ExportResources = { fonts: printingFonts };

async function bytesOf(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`the printing font did not load (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}
