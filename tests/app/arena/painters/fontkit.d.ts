/** What a test asks of a font file; the package has no types of its own. */
declare module 'fontkit' {
  interface Font {
    readonly unitsPerEm: number;
    hasGlyphForCodePoint(code: number): boolean;
    glyphForCodePoint(code: number): { readonly advanceWidth: number };
  }
  export function create(file: Uint8Array): Font;
}
