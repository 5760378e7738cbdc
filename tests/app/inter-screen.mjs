/**
 * Writes assets/fonts/inter-regular.woff2 and inter-bold.woff2: the printing font's letters for the screen, without the
 * scripts that the app's words do not need; and inter-screen-widths.json: how wide each of them is, so that the arena can
 * place labels without a canvas. Run when the font changes:
 *   node tests/app/inter-screen.mjs
 *
 * A WOFF2 file is the font's tables one after the other under Brotli. The two large ones may be transformed first; they
 * are left as they are here (transform 3), which costs a few kB and saves a page of code.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { brotliCompressSync, constants } from 'node:zlib';
import * as fontkit from 'fontkit';

const fontFile = createRequire(import.meta.url).resolve;

/** Latin letters of European names, and the signs that the app writes. The same ranges stand in styles/typeface.css. */
const RANGES = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x218, 0x21b],
  [0x2010, 0x2026],
  [0x2030, 0x203a],
  [0x2044, 0x2044],
  [0x20ac, 0x20ac],
  [0x2122, 0x2122],
  [0x2150, 0x215e],
  [0x2190, 0x2199],
  [0x2212, 0x2212],
  [0x2248, 0x2248],
  [0x2260, 0x2265],
  [0x25cb, 0x25cf],
  [0x2713, 0x2713],
];
/** The widths that the arena is told: of the plain letters and the signs of lengths. All others are taken as wide ones. */
const TOLD = [
  [0x20, 0x7e],
  [0xbc, 0xbe],
  [0xd7, 0xd7],
  [0x2032, 0x2033],
];
/** Kerning smaller than this part of the em is not seen at the sizes of a screen. */
const LEAST_KERN = 1 / 100;
/** Pairs are kerned among letters, figures and points without accents only. */
const KERNED = [0x20, 0x7e];

const FIGURES = [...'0123456789'];

function rawTables(file) {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const found = new Map();
  for (let i = 0; i < view.getUint16(4); i++) {
    const entry = 12 + 16 * i;
    const tag = String.fromCharCode(...file.subarray(entry, entry + 4));
    const from = view.getUint32(entry + 8);
    found.set(tag, file.subarray(from, from + view.getUint32(entry + 12)));
  }
  return found;
}

/** Big-endian 16-bit numbers as bytes. */
function words(numbers) {
  const bytes = Buffer.alloc(2 * numbers.length);
  numbers.forEach((each, i) => {
    bytes.writeUInt16BE(each & 0xffff, 2 * i);
  });
  return bytes;
}

/** What a binary search over `count` entries of `size` bytes is told in a font's tables. */
function searchFields(count, size) {
  const steps = Math.floor(Math.log2(count));
  const range = size * 2 ** steps;
  return [range, steps, size * count - range];
}

/** cmap, format 4: runs of neighbouring code points, each with its glyphs listed. */
function characterMap(glyphOf) {
  const runs = [];
  for (const code of [...glyphOf.keys()].sort((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run !== undefined && run.last === code - 1) run.last = code;
    else runs.push({ first: code, last: code });
  }
  runs.push({ first: 0xffff, last: 0xffff });
  const glyphs = [];
  const offsets = runs.map(({ first, last }, i) => {
    const before = glyphs.length;
    for (let code = first; code <= last; code++) glyphs.push(glyphOf.get(code) ?? 0);
    return 2 * (runs.length - i + before);
  });
  const body = [
    2 * runs.length,
    ...searchFields(runs.length, 2),
    ...runs.map(({ last }) => last),
    0,
    ...runs.map(({ first }) => first),
    ...runs.map(() => 0),
    ...offsets,
    ...glyphs,
  ];
  const table = [4, 2 * (body.length + 3), 0, ...body];
  return words([0, 1, 3, 1, 0, 12, ...table]);
}

/** kern, format 0: pairs of glyphs and how much nearer the second stands. */
function kerning(font, glyphOf) {
  const codes = [...glyphOf.keys()].filter((code) => code >= KERNED[0] && code <= KERNED[1]);
  const advance = new Map(codes.map((code) => [code, font.glyphForCodePoint(code).advanceWidth]));
  const features = { calt: false, liga: false };
  const pairs = [];
  for (const left of codes) {
    for (const right of codes) {
      const laid = font.layout(String.fromCodePoint(left, right), features).positions;
      const by = Math.round(laid[0].xAdvance - advance.get(left));
      if (Math.abs(by) >= LEAST_KERN * font.unitsPerEm) pairs.push([glyphOf.get(left), glyphOf.get(right), by]);
    }
  }
  pairs.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const head = [0, 1, 0, 14 + 6 * pairs.length, 1, pairs.length, ...searchFields(pairs.length, 6)];
  return words([...head, ...pairs.flat()]);
}

/** GSUB with one feature: figures of one width, for columns of numbers. */
function tabularFigures(pairs) {
  const sorted = pairs.toSorted((a, b) => a[0] - b[0]);
  const tag = (name) => [
    (name.charCodeAt(0) << 8) | name.charCodeAt(1),
    (name.charCodeAt(2) << 8) | name.charCodeAt(3),
  ];
  const script = [4, 0, 0, 0xffff, 1, 0];
  const scripts = [1, ...tag('DFLT'), 8, ...script];
  const features = [1, ...tag('tnum'), 8, 0, 1, 0];
  const count = sorted.length;
  const single = [2, 6 + 2 * count, count, ...sorted.map(([, to]) => to), 1, count, ...sorted.map(([from]) => from)];
  const lookups = [1, 4, 1, 0, 1, 8, ...single];
  const at = 10;
  return words([
    1,
    0,
    at,
    at + 2 * scripts.length,
    at + 2 * (scripts.length + features.length),
    ...scripts,
    ...features,
    ...lookups,
  ]);
}

/** A number in groups of seven bits, the largest first. */
function base128(number) {
  const groups = [number & 0x7f];
  for (let rest = number >>> 7; rest > 0; rest >>>= 7) groups.unshift((rest & 0x7f) | 0x80);
  return Buffer.from(groups);
}

function woff2(tables) {
  const sorted = [...tables].sort(([a], [b]) => (a < b ? -1 : 1));
  const directory = Buffer.concat(
    sorted.map(([tag, bytes]) => {
      const isLeftAsIs = tag === 'glyf' || tag === 'loca';
      return Buffer.concat([Buffer.from([0x3f | (isLeftAsIs ? 0xc0 : 0)]), Buffer.from(tag), base128(bytes.length)]);
    }),
  );
  const padded = (length) => (length + 3) & ~3;
  const packed = brotliCompressSync(Buffer.concat(sorted.map(([, bytes]) => bytes)), {
    params: { [constants.BROTLI_PARAM_MODE]: constants.BROTLI_MODE_FONT, [constants.BROTLI_PARAM_LGWIN]: 22 },
  });
  const length = padded(48 + directory.length + packed.length);
  const sfntSize = sorted.reduce((sum, [, bytes]) => sum + padded(bytes.length), 12 + 16 * sorted.length);
  const head = Buffer.alloc(48);
  head.write('wOF2', 0, 'latin1');
  head.writeUInt32BE(0x00010000, 4);
  head.writeUInt32BE(length, 8);
  head.writeUInt16BE(sorted.length, 12);
  head.writeUInt32BE(sfntSize, 16);
  head.writeUInt32BE(packed.length, 20);
  head.writeUInt16BE(1, 24);
  const file = Buffer.alloc(length);
  Buffer.concat([head, directory, packed]).copy(file);
  return file;
}

function screenFont(name) {
  const source = readFileSync(fontFile(`@expo-google-fonts/inter/${name}.ttf`));
  const font = fontkit.create(source);
  const subset = font.createSubset();
  const glyphOf = new Map();
  for (const [first, last] of RANGES) {
    for (let code = first; code <= last; code++) {
      if (!font.hasGlyphForCodePoint(code)) continue;
      glyphOf.set(code, subset.includeGlyph(font.glyphForCodePoint(code)));
    }
  }
  const figures = FIGURES.map((figure) => {
    const [tabular] = font.layout(figure, { tnum: true }).glyphs;
    return [glyphOf.get(figure.codePointAt(0)), subset.includeGlyph(tabular)];
  });
  const kept = rawTables(Buffer.from(subset.encode()));
  const whole = rawTables(source);
  const tables = new Map(
    ['head', 'hhea', 'maxp', 'loca', 'glyf', 'hmtx', 'cvt ', 'fpgm', 'prep'].flatMap((tag) =>
      kept.has(tag) ? [[tag, kept.get(tag)]] : [],
    ),
  );
  // No names of glyphs (version 3); the slant and the underline are the font's.
  const post = Buffer.from(whole.get('post').subarray(0, 32));
  post.writeUInt32BE(0x00030000, 0);
  tables.set('post', post);
  tables.set('OS/2', whole.get('OS/2'));
  tables.set('name', whole.get('name'));
  tables.set('cmap', characterMap(glyphOf));
  tables.set('kern', kerning(font, glyphOf));
  tables.set('GSUB', tabularFigures(figures));
  return { file: woff2(tables), widths: TOLD.map((run) => advances(font, run)), em: font.unitsPerEm };
}

/** The first code point of a run, then one advance for each. */
function advances(font, [first, last]) {
  const codes = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  return [first, ...codes.map((code) => font.glyphForCodePoint(code).advanceWidth)];
}

const out = (name) => new URL(`../../assets/fonts/${name}`, import.meta.url);
const table = {};
for (const [name, weight] of [
  ['400Regular/Inter_400Regular', 'regular'],
  ['700Bold/Inter_700Bold', 'bold'],
]) {
  const { file, widths, em } = screenFont(name);
  writeFileSync(out(`inter-${weight}.woff2`), file);
  process.stdout.write(`inter-${weight}.woff2 ${(file.length / 1000).toFixed(1)} kB\n`);
  table.em = em;
  table[weight] = widths;
}
const lines = Object.entries(table).map(([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)}`);
writeFileSync(out('inter-screen-widths.json'), `{\n${lines.join(',\n')}\n}\n`);
