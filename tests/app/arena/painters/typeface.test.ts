import { readFileSync } from 'node:fs';
import * as fontkit from 'fontkit';
import { expect, test } from 'vitest';
import { textWidth } from '../../../../src/app/arena/painters/typeface.ts';
import { textWidth as paperWidth } from '../../../../src/sheets/lettering.ts';

const SAID = 'Back-through L 6′ 7½″ 10 × 12, Über Łódź Čeština Ţ ← ✓ ≤ € – — “so” ‘it’ … ● 0.25 m';

test.each(['regular', 'bold'] as const)('the %s letters on the screen are those on paper, as wide', (weight) => {
  const file = new Uint8Array(readFileSync(`assets/fonts/inter-${weight}.woff2`));
  const font = fontkit.create(file);
  for (const sign of SAID) {
    const code = sign.codePointAt(0) ?? 0;
    expect(font.hasGlyphForCodePoint(code), sign).toBe(true);
    expect(font.glyphForCodePoint(code).advanceWidth / font.unitsPerEm).toBeCloseTo(paperWidth(sign, 1, weight), 6);
  }
});

test.each(['regular', 'bold'] as const)('a label in %s is told as wide as it is on paper', (weight) => {
  const label = 'Side pass 3, 7: 6′ 7½″ × 4';
  expect(textWidth(label, weight, 13)).toBeCloseTo(paperWidth(label, 13, weight), 6);
});
