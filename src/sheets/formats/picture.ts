/** A page as a picture of dots, drawn by one rasterizer everywhere: the same bytes in the browser and on the command line. */
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import type { Fonts } from '../pdf.ts';
import type { Page } from '../sheet.ts';
import { svg } from '../svg.ts';
import type { ExportResources, TooManyDots } from './format.ts';

const MM_PER_INCH = 25.4;
/** Four bytes a dot are 200 MB while it is drawn. A Legal page at 600 dots in an inch has 43 million dots. */
const MOST_DOTS = 50_000_000;

let started: Promise<void> | undefined;

/** The rasterizer may be started only once in a process. A start that failed is tried again. */
async function startRasterizer(resources: ExportResources): Promise<void> {
  started ??= resources.rasterizer().then((bytes) => initWasm(bytes as Uint8Array<ArrayBuffer>));
  try {
    await started;
  } catch (failure) {
    started = undefined;
    throw failure;
  }
}

/**
 * A font without its table of substitutions: the rasterizer always uses it, and would draw `10x12` as `10×12`. The
 * table's entry in the directory gets a name that nobody asks for.
 */
function withoutSubstitutions(font: Uint8Array): Uint8Array {
  const copy = font.slice();
  const view = new DataView(copy.buffer);
  const tables = view.getUint16(4);
  for (let entry = 12; entry < 12 + 16 * tables; entry += 16) {
    if (String.fromCharCode(...copy.subarray(entry, entry + 4)) === 'GSUB') copy[entry + 3] = 'A'.charCodeAt(0);
  }
  return copy;
}

/** CRC-32 as the chunks of a PNG carry it. */
function crc32(bytes: Uint8Array): number {
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}

/** Signature and header of a PNG; the header is always the first chunk, and 25 bytes long. */
const PNG_HEAD = 8 + 25;

/** The picture with its size on paper, so that it prints to scale. */
function withResolution(png: Uint8Array, dpi: number): Uint8Array {
  const perMetre = Math.round((1000 * dpi) / MM_PER_INCH);
  const chunk = new Uint8Array(21);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, 9);
  chunk.set(new TextEncoder().encode('pHYs'), 4);
  view.setUint32(8, perMetre);
  view.setUint32(12, perMetre);
  chunk[16] = 1;
  view.setUint32(17, crc32(chunk.subarray(4, 17)));
  const whole = new Uint8Array(png.length + chunk.length);
  whole.set(png.subarray(0, PNG_HEAD));
  whole.set(chunk, PNG_HEAD);
  whole.set(png.subarray(PNG_HEAD), PNG_HEAD + chunk.length);
  return whole;
}

/** Why the pages cannot be drawn with so many dots in an inch; undefined when they can. */
export function dotsRefusal(pages: readonly Page[], dpi: number): TooManyDots | undefined {
  if (!(dpi > 0)) throw new Error(`dotsRefusal: a picture has more than 0 dots in an inch, got ${dpi}`);
  const [largest] = pages.toSorted((a, b) => b.width * b.height - a.width * a.height);
  if (largest === undefined) return undefined;
  const inches = (largest.width * largest.height) / MM_PER_INCH ** 2;
  const dots = inches * dpi * dpi;
  if (dots <= MOST_DOTS) return undefined;
  const nearest = Math.floor(Math.sqrt(MOST_DOTS / inches));
  const millions = (count: number) => Math.round(count / 1e6);
  const why = `At ${dpi} dots in an inch the page has ${millions(dots)} million dots; ${millions(MOST_DOTS)} million are the most that can be drawn. ${nearest} dots in an inch fit.`;
  return { kind: 'too-many-dots', why, nearest };
}

/** How pages are turned into pictures; made once for a job. */
export interface Painter {
  /** The PNG file of a page. */
  png(page: Page, dpi: number): Uint8Array;
}

/** Rejects when the fonts or the rasterizer cannot be had. */
export async function painter(resources: ExportResources): Promise<Painter> {
  const [{ regular, bold, symbols }] = await Promise.all<[Promise<Fonts>, Promise<void>]>([
    resources.fonts(),
    startRasterizer(resources),
  ]);
  const fontBuffers = [regular, bold, symbols].map(withoutSubstitutions);
  return {
    png(page, dpi) {
      const width = Math.round((page.width / MM_PER_INCH) * dpi);
      const picture = new Resvg(svg(page), {
        font: { fontBuffers, defaultFontFamily: 'Inter' },
        fitTo: { mode: 'width', value: width },
      });
      const image = picture.render();
      const bytes = withResolution(image.asPng(), dpi);
      // The memory of WebAssembly is not collected by itself.
      image.free();
      picture.free();
      return bytes;
    },
  };
}
