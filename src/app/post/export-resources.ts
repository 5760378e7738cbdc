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

/** The letters of pictures. Rejects when they cannot be fetched. */
export async function pictureFaces() {
  const [regular, bold] = await Promise.all([
    import('../../../assets/fonts/inter-regular.woff2?url').then(fileOf),
    import('../../../assets/fonts/inter-bold.woff2?url').then(fileOf),
  ]);
  return { regular, bold };
}

/** What writers need in a browser: fetched from where the app came from. */
export const BROWSER_RESOURCES: ExportResources = {
  fonts: printingFonts,
  faces: pictureFaces,
  rasterizer: () => import('@resvg/resvg-wasm/index_bg.wasm?url').then(fileOf),
};

async function fileOf({ default: url }: { readonly default: string }): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`a part of the writer did not load (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}
