import { andList } from '../core/text/sentence.ts';
import { printable } from './lettering.ts';
import type { Page } from './sheet.ts';

/** More signs than these are counted, not listed. */
const LISTED = 40;
const RIGHT_TO_LEFT = /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;
const EAST_ASIAN =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Script=Bopomofo}\u3000-\u303f\uff00-\uffef]/u;

function quoted(signs: readonly string[]): string {
  const listed = signs.slice(0, LISTED).map((sign) => `“${sign}”`);
  const more = signs.length - listed.length;
  return more === 0 ? andList(listed) : `${listed.join(', ')} and ${more} more`;
}

/** "“a” and “b” are left out": the verb agrees. */
function told(signs: readonly string[], what: string): string {
  return `${quoted(signs)} ${signs.length === 1 ? 'is' : 'are'} ${what}`;
}

/** What has to be said of scripts without a font. */
function scriptWords(signs: readonly string[]): string {
  const names = [
    ...(signs.some((sign) => EAST_ASIAN.test(sign)) ? ['Chinese, Japanese and Korean'] : []),
    ...(signs.some((sign) => RIGHT_TO_LEFT.test(sign)) ? ['scripts that run from right to left'] : []),
  ];
  return names.length === 0 ? '' : ` There is no font here for ${names.join(', nor for ')}.`;
}

/** One sentence about all signs in these texts that had to be replaced for want of a glyph; none where there are none. */
export function signNotice(texts: readonly string[]): readonly string[] {
  const replaced = new Map(texts.flatMap((text) => [...printable(text).replaced]));
  if (replaced.size === 0) return [];
  const byReplacement = new Map<string, string[]>();
  for (const [sign, instead] of replaced) byReplacement.set(instead, [...(byReplacement.get(instead) ?? []), sign]);
  const parts = [...byReplacement].map(([instead, signs]) =>
    told(signs, instead === '' ? 'left out' : `printed as “${instead}”`),
  );
  return [`Not in the printing fonts: ${parts.join('; ')}.${scriptWords([...replaced.keys()])}`];
}

/** The same about all that stands on pages. */
export function substitutionsOf(pages: readonly Page[]): readonly string[] {
  return signNotice(pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'words' ? [mark.text] : []))));
}
