import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { ExportResources } from '../sheets/formats/format.ts';
import type { Fonts } from '../sheets/pdf.ts';

const { resolve } = createRequire(import.meta.url);

async function readFonts(): Promise<Fonts> {
  const read = (file: string) => readFile(resolve(`@expo-google-fonts/${file}`));
  const [regular, bold, symbols] = await Promise.all([
    read('inter/400Regular/Inter_400Regular.ttf'),
    read('inter/700Bold/Inter_700Bold.ttf'),
    read('noto-sans-symbols-2/400Regular/NotoSansSymbols2_400Regular.ttf'),
  ]);
  return { regular, bold, symbols };
}

async function readFaces() {
  const read = (file: string) => readFile(new URL(`../../assets/fonts/${file}`, import.meta.url));
  const [regular, bold] = await Promise.all([read('inter-regular.woff2'), read('inter-bold.woff2')]);
  return { regular, bold };
}

/** Reads when it is first asked, and once. */
function once<Resource>(read: () => Promise<Resource>): () => Promise<Resource> {
  let answer: Promise<Resource> | undefined;
  return () => {
    answer ??= read();
    return answer;
  };
}

/** What the writers of files need, from the installed packages. */
export function exportResources(): ExportResources {
  return {
    fonts: once(readFonts),
    faces: once(readFaces),
    rasterizer: once(() => readFile(resolve('@resvg/resvg-wasm/index_bg.wasm'))),
  };
}
