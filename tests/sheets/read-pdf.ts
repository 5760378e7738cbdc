/** Reads a PDF back with programs that did not write it: pdf.js for its paths, poppler for its letters and its ink. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface Corner {
  readonly x: number;
  readonly y: number;
}

const MM = 25.4 / 72;
/** How many numbers follow each drawing code of pdf.js: move, line, curve, quadratic, close. */
const COUNTS = [2, 2, 6, 4, 0];

function cornersOf(data: Float32Array | number[]): Corner[] {
  const corners: Corner[] = [];
  for (let at = 0; at < data.length; ) {
    const code = data[at] ?? 0;
    const count = COUNTS[code] ?? 0;
    if (code <= 1) corners.push({ x: (data[at + 1] ?? 0) * MM, y: (data[at + 2] ?? 0) * MM });
    at += 1 + count;
  }
  return corners;
}

/** Every path on a page as its corners, millimetres, y down as the page's own frame has it. */
export async function pathsOf(bytes: Uint8Array, number = 1): Promise<readonly (readonly Corner[])[]> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const page = await document.getPage(number);
  const list = await page.getOperatorList();
  const paths: Corner[][] = [];
  list.fnArray.forEach((op, index) => {
    if (op !== OPS.constructPath) return;
    const [, [data]] = list.argsArray[index] as [number, [Float32Array | null]];
    if (data !== null) paths.push(cornersOf(data));
  });
  await document.destroy();
  return paths;
}

export interface WordBox {
  readonly text: string;
  /** Millimetres. */
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

function run(program: string, args: readonly string[]): string {
  try {
    return execFileSync(program, args, { encoding: 'utf8' });
  } catch (error) {
    const missing = error instanceof Error && 'code' in error && error.code === 'ENOENT';
    if (missing) throw new Error(`${program} is missing. It comes with poppler: apt-get install poppler-utils`);
    throw error;
  }
}

function inFolder<T>(bytes: Uint8Array, read: (file: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
  try {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, bytes);
    return read(file, folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The words of every page with their boxes, page by page. */
export function wordBoxes(bytes: Uint8Array): readonly (readonly WordBox[])[] {
  const html = inFolder(bytes, (file) => run('pdftotext', ['-bbox', file, '-']));
  return html
    .split('<page ')
    .slice(1)
    .map((page) =>
      [...page.matchAll(/<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)<\/word>/g)].map(
        ([, minX, minY, maxX, maxY, text = '']) => ({
          text,
          minX: Number(minX) * MM,
          minY: Number(minY) * MM,
          maxX: Number(maxX) * MM,
          maxY: Number(maxY) * MM,
        }),
      ),
    );
}

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** Dots in a millimetre. */
  readonly fine: number;
  /** 0 black … 255 white. */
  readonly grey: Uint8Array;
}

/** A page as dots, black where there is ink. */
export function pictureOf(bytes: Uint8Array, page = 1, dpi = 150): Picture {
  return inFolder(bytes, (file, folder) => {
    const name = join(folder, 'page');
    run('pdftoppm', ['-gray', '-r', `${dpi}`, '-f', `${page}`, '-l', `${page}`, '-singlefile', file, name]);
    const pgm = readFileSync(`${name}.pgm`);
    const [, width = '0', height = '0'] =
      /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 40).toString('latin1')) ?? [];
    const count = Number(width) * Number(height);
    return { width: Number(width), height: Number(height), fine: dpi / 25.4, grey: pgm.subarray(pgm.length - count) };
  });
}

/** Share of the dots in a box that are darker than half. */
export function inkIn({ width, height, fine, grey }: Picture, box: Omit<WordBox, 'text'>): number {
  let dark = 0;
  let all = 0;
  for (let y = Math.floor(box.minY * fine); y < Math.min(height, Math.ceil(box.maxY * fine)); y += 1) {
    for (let x = Math.floor(box.minX * fine); x < Math.min(width, Math.ceil(box.maxX * fine)); x += 1) {
      all += 1;
      if ((grey[y * width + x] ?? 255) < 128) dark += 1;
    }
  }
  return all === 0 ? 0 : dark / all;
}
