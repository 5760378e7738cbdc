import bold from '../../../assets/fonts/inter-bold.woff2?url';
import regular from '../../../assets/fonts/inter-regular.woff2?url';
import type { ExportResources } from '../../sheets/formats/format.ts';

/** What writers need in a browser: fetched from where the app came from, each when it is asked for. */
export const BROWSER_RESOURCES: ExportResources = {
  async fonts() {
    const [normal, heavy, symbols] = await Promise.all([
      import('@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf?url').then(urlOf).then(fileAt),
      import('@expo-google-fonts/inter/700Bold/Inter_700Bold.ttf?url').then(urlOf).then(fileAt),
      import('@expo-google-fonts/noto-sans-symbols-2/400Regular/NotoSansSymbols2_400Regular.ttf?url')
        .then(urlOf)
        .then(fileAt),
    ]);
    return { regular: normal, bold: heavy, symbols };
  },
  async faces() {
    const [normal, heavy] = await Promise.all([fileAt(regular), fileAt(bold)]);
    return { regular: normal, bold: heavy };
  },
  rasterizer: () => import('@resvg/resvg-wasm/index_bg.wasm?url').then(urlOf).then(fileAt),
};

function urlOf({ default: url }: { readonly default: string }): string {
  return url;
}

async function fileAt(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`${url} did not load (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}
