import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { ExportResources, ExportWatch } from '../../../src/sheets/formats/format.ts';
import type { PageOptions } from '../../../src/sheets/sheet.ts';
import { FONTS } from '../fonts.ts';

const { resolve } = createRequire(import.meta.url);

function bytesOf(path: string): Uint8Array {
  return new Uint8Array(readFileSync(path));
}

/** What writers need, as the command line reads it. */
export const RESOURCES: ExportResources = {
  fonts: async () => FONTS,
  faces: async () => ({
    regular: bytesOf('assets/fonts/inter-regular.woff2'),
    bold: bytesOf('assets/fonts/inter-bold.woff2'),
  }),
  rasterizer: async () => bytesOf(resolve('@resvg/resvg-wasm/index_bg.wasm')),
};

/** Nobody watches. */
export const UNWATCHED: ExportWatch = { step: () => {} };

export const LETTER: PageOptions = { paper: 'letter', orientation: 'fit' };
