import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Fonts } from '../../src/sheets/pdf.ts';

const path = createRequire(import.meta.url).resolve;

/** The printing fonts, as the command line reads them. */
export const FONTS: Fonts = {
  regular: new Uint8Array(readFileSync(path('@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf'))),
  bold: new Uint8Array(readFileSync(path('@expo-google-fonts/inter/700Bold/Inter_700Bold.ttf'))),
  symbols: new Uint8Array(
    readFileSync(path('@expo-google-fonts/noto-sans-symbols-2/400Regular/NotoSansSymbols2_400Regular.ttf')),
  ),
};
