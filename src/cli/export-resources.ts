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

/** What the writers of files need, from the installed packages; each is read once. */
export function exportResources(): ExportResources {
  let fonts: Promise<Fonts> | undefined;
  return {
    fonts() {
      fonts ??= readFonts();
      return fonts;
    },
  };
}
