/**
 * Writes assets/fonts/inter-widths.json and symbol-widths.json: how wide each sign of the printing fonts is. Run once when a
 * font changes:
 *   node tests/sheets/inter-widths.mjs
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import * as fontkit from 'fontkit';

const fontFile = createRequire(import.meta.url).resolve;

/** Runs of neighbouring code points: the first code point, then one advance for each. */
function runs(font, isWanted = () => true) {
  const found = [];
  let last = Number.NaN;
  for (const code of [...font.characterSet].filter(isWanted).sort((a, b) => a - b)) {
    if (code !== last + 1) found.push([code]);
    found.at(-1).push(font.glyphForCodePoint(code).advanceWidth);
    last = code;
  }
  return found;
}

function opened(name) {
  return fontkit.create(readFileSync(fontFile(`@expo-google-fonts/${name}.ttf`)));
}

function write(file, table) {
  const lines = Object.entries(table).map(([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`);
  writeFileSync(new URL(`../../assets/fonts/${file}`, import.meta.url), `{\n${lines.join(',\n')}\n}\n`);
}

const regular = opened('inter/400Regular/Inter_400Regular');
const bold = opened('inter/700Bold/Inter_700Bold');
write('inter-widths.json', {
  about: 'Advance widths of Inter Regular and Bold (SIL Open Font License 1.1), in units of the em, without kerning.',
  em: regular.unitsPerEm,
  capHeight: regular.capHeight,
  ascent: regular.ascent,
  descent: regular.descent,
  regular: runs(regular),
  bold: runs(bold),
});

/** Signs that Inter lacks; no controls, and no accents to be set over others. */
const isMissing = (code) =>
  code >= 0x2000 && !(regular.characterSet.includes(code) && bold.characterSet.includes(code));
const symbols = opened('noto-sans-symbols-2/400Regular/NotoSansSymbols2_400Regular');
write('symbol-widths.json', {
  about:
    'Advance widths of Noto Sans Symbols 2 (SIL Open Font License 1.1) where Inter has no sign, in units of the em.',
  em: symbols.unitsPerEm,
  symbols: runs(symbols, isMissing),
});
