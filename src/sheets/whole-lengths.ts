/** Feet and inches of one length, a figure and its unit, and a letter or a number and the word before it stay on one line. */
export function withWholeLengths(text: string): string {
  return text
    .replace(/' (?=[\d¼½¾])/g, "'\u00a0")
    .replace(/ (?=[A-Z]{1,2}(?:[ ,.:)–]|$))/g, '\u00a0')
    .replace(/(\p{Ll}) (?=\d+(?:[ ,:;)]|\.?$|\. ))/gu, '$1\u00a0')
    .replace(/(\d) (?=m\b)/g, '$1\u00a0');
}
