import { base64 } from '../core/text/base64.ts';
import type { Fonts } from './pdf.ts';

/** The letters of the sheets as @font-face rules that hold the font files (WOFF2): a picture may not fetch any. */
export function faceRules({ regular, bold }: Pick<Fonts, 'regular' | 'bold'>): string {
  const rule = (weight: number, file: Uint8Array) =>
    `@font-face{font-family:Inter;font-weight:${weight};src:url(data:font/woff2;base64,${base64(file)})}`;
  return rule(400, regular) + rule(700, bold);
}
