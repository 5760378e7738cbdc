/** Stands in for a WOFF2 decoder in the browser bundle: our fonts are TTF, so it is never called. */
export default function decompress(): never {
  throw new Error('Polewright ships TTF fonts only; a WOFF2 font was handed to the PDF writer.');
}
