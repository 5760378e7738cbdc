import type { Conflict } from '../../core/course/conflict.ts';
import { gripName } from '../../core/course/resolved-constraints.ts';
import type { Survey } from '../../core/survey.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { nameOf } from '../names.ts';

/**
 * The core names things by their ids, because it does not know the numbers of the go; people know them by those
 * numbers.
 */

function regexLiteral(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** The text with pieces and obstacles named as in the rest of the desk. */
export function withDisplayNames(text: string, survey: Survey): string {
  const names = new Map<string, string>();
  for (const { key } of survey.pieces) names.set(gripName({ piece: key }, survey.layout), nameOf(survey, key));
  for (const { id, name } of survey.layout.obstacles) names.set(name ?? id.replaceAll('-', ' '), nameOf(survey, id));
  // The longest first, so that a piece is not taken for its obstacle.
  const coreNames = [...names.keys()].filter((name) => name !== '').sort((a, b) => b.length - a.length);
  if (coreNames.length === 0) return text;
  const pattern = new RegExp(`(?<![\\w(])(?:${coreNames.map(regexLiteral).join('|')})(?!\\w)`, 'gi');
  const lower = new Map([...names].map(([name, display]) => [name.toLowerCase(), display]));
  return text.replace(pattern, (found, at: number) => {
    const display = lower.get(found.toLowerCase()) ?? found;
    const begins = at === 0 || /[.:!?] $/.test(text.slice(0, at));
    return begins ? capitalized(display) : display;
  });
}

/** A conflict in the desk's words. */
export function conflictWithDisplayNames(conflict: Conflict, survey: Survey): Conflict {
  const named = (text: string) => withDisplayNames(text, survey);
  const [culprit, ...culprits] = conflict.members;
  const [offer, ...offers] = conflict.resolutions;
  return {
    says: named(conflict.says),
    members: [
      { ...culprit, says: named(culprit.says) },
      ...culprits.map((each) => ({ ...each, says: named(each.says) })),
    ],
    resolutions: [
      { ...offer, says: named(offer.says) },
      ...offers.map((each) => ({ ...each, says: named(each.says) })),
    ],
  };
}
