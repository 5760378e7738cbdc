import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Faces } from '../sheets/faces.ts';
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

const FACES = new URL('../../assets/fonts/', import.meta.url);

async function readFaces(): Promise<Faces> {
  const [regular, bold] = await Promise.all(
    ['inter-regular.woff2', 'inter-bold.woff2'].map((file) => readFile(new URL(file, FACES))),
  );
  if (regular === undefined || bold === undefined) throw new Error('readFaces: two files were asked for');
  return { regular, bold };
}

/** What the writers of files need, from the installed packages; the fonts are read once. */
export function exportResources(): ExportResources {
  let fonts: Promise<Fonts> | undefined;
  return {
    fonts() {
      fonts ??= readFonts();
      return fonts;
    },
    faces: readFaces,
    rasterizer: () => readFile(resolve('@resvg/resvg-wasm/index_bg.wasm')),
  };
}
