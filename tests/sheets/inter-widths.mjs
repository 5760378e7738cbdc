/**
 * Writes assets/fonts/inter-widths.json: how wide each sign of the printing font is. Run once when the font changes:
 *   node tests/sheets/inter-widths.mjs
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import * as fontkit from 'fontkit';

const fontFile = createRequire(import.meta.url).resolve;

/** Runs of neighbouring code points: the first code point, then one advance for each. */
function runs(font) {
  const found = [];
  let last = Number.NaN;
  for (const code of [...font.characterSet].sort((a, b) => a - b)) {
    if (code !== last + 1) found.push([code]);
    found.at(-1).push(font.glyphForCodePoint(code).advanceWidth);
    last = code;
  }
  return found;
}

function opened(name) {
  return fontkit.create(readFileSync(fontFile(`@expo-google-fonts/inter/${name}.ttf`)));
}

const regular = opened('400Regular/Inter_400Regular');
const bold = opened('700Bold/Inter_700Bold');
const table = {
  about: 'Advance widths of Inter Regular and Bold (SIL Open Font License 1.1), in units of the em, without kerning.',
  em: regular.unitsPerEm,
  capHeight: regular.capHeight,
  ascent: regular.ascent,
  descent: regular.descent,
  regular: runs(regular),
  bold: runs(bold),
};
const lines = Object.entries(table).map(([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`);
writeFileSync(new URL('../../assets/fonts/inter-widths.json', import.meta.url), `{\n${lines.join(',\n')}\n}\n`);
