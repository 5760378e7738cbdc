import type { ExportResources } from '../../sheets/formats/format.ts';
import type { Fonts } from '../../sheets/pdf.ts';

/** The fonts of a PDF. Rejects when they cannot be fetched. */
export async function printingFonts(): Promise<Fonts> {
  const [regular, bold, symbols] = await Promise.all([
    import('@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url').then(fileOf),
    import('@expo-google-fonts/inter/700Bold/Inter_700Bold.ttf?url').then(fileOf),
    import('@expo-google-fonts/noto-sans-symbols-2/400Regular/NotoSansSymbols2_400Regular.ttf?url').then(fileOf),
  ]);
  return { regular, bold, symbols };
}

/** What writers need in a browser: fetched from where the app came from. */
export const BROWSER_RESOURCES: ExportResources = { fonts: printingFonts };

async function fileOf({ default: url }: { readonly default: string }): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`the printing font did not load (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}
