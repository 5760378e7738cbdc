import { PRACTICE, rulebookById } from '../checks/rulebooks/rulebooks.ts';
import type { Scoring } from '../checks/rulebooks/scoring.ts';
import type { RuleChoice } from '../course/course.ts';
import type { CardScoring } from './score-card.ts';

/** By points: ½ is the first penalty that is looked for. Of equal points the order of the book stays. */
function byPoints<T extends { readonly points: number }>(list: readonly T[]): readonly T[] {
  return list.toSorted((a, b) => a.points - b.points);
}

/** Those of the first list, then those of the second whose ids are new. */
function joined<T extends { readonly id: string }>(first: readonly T[], second: readonly T[]): readonly T[] {
  const ids = new Set(first.map(({ id }) => id));
  return [...first, ...second.filter(({ id }) => !ids.has(id))];
}

/** The list that is borrowed where a book has none. */
function borrowed(): { readonly title: string; readonly scoring: Scoring } {
  const book = rulebookById(PRACTICE.scoring?.borrows ?? '');
  if (book?.scoring === undefined) throw new Error(`scoring: there is no list in ${PRACTICE.scoring?.borrows}`);
  return { title: book.title, scoring: book.scoring };
}

/** How a go is scored by the rule book in force; what it does not say is common practice or another book's, and says so. */
export function cardScoring({ id }: RuleChoice): CardScoring {
  const book = rulebookById(id);
  const own = book?.scoring;
  const { title, scoring: other } = borrowed();
  const hasList = own?.penalties !== undefined;
  const base = own?.base ?? other.base;
  const scale = own?.scale ?? other.scale;
  if (base === undefined || scale === undefined) throw new Error('scoring: the borrowed list has no base or no scale');
  const practised = PRACTICE.scoring;
  const listed = hasList ? (own.penalties ?? []) : joined(other.penalties ?? [], practised?.penalties ?? []);
  const ruled = hasList ? (own.rulings ?? []) : joined(own?.rulings ?? [], other.rulings ?? []);
  const rulings = joined(ruled, practised?.rulings ?? []);
  const tie = own?.tie;
  const unscored = own?.unscored;
  return {
    book: book?.title ?? id,
    about: [
      ...(own === undefined ? [] : [own.about]),
      ...(hasList ? [] : [`${book?.title ?? id} has no list of penalties here: the list is that of ${title}.`]),
    ],
    base: base.points,
    ...(base.least === undefined ? {} : { least: base.least }),
    scale: { least: scale.least, most: scale.most, words: { ...scale.words }, source: scale.source },
    penalties: byPoints(listed).map(({ id: penalty, points, fault, below, source }) => ({
      id: penalty,
      points,
      fault,
      ...(below === undefined ? {} : { below }),
      source,
    })),
    rulings: rulings.map(({ id: ruling, effect, fault, source }) => ({ id: ruling, effect, fault, source })),
    ...(unscored === undefined ? {} : { unscored: unscored.fault }),
    zero: own?.zero?.placed ?? practised?.zero?.placed ?? 'last',
    ...(tie === undefined
      ? {}
      : {
          tie: {
            by: tie.by,
            only: tie.only,
            says: `With ${tie.only}, the time on the course breaks a tie, then ${tie.then} (${tie.source}).`,
          },
        }),
  };
}
