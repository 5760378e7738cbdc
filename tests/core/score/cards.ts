/** Cards for tests: three obstacles, entries by number, scored by a book's own list. */
import fc from 'fast-check';
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { blankCard } from '../../../src/core/score/blank-card.ts';
import type { ScoreCard } from '../../../src/core/score/score-card.ts';
import { type Tap, tapped } from '../../../src/core/score/taps.ts';

export const COLUMNS = [
  { leg: 'leg-1', number: 1, name: 'Gate, left-hand push' },
  { leg: 'leg-2', number: 2, name: 'Lope-overs' },
  { leg: 'leg-3', number: 3, name: 'Box, turn 360° left' },
];

export function courseBy(book: string, numbers: readonly string[] = []): Course {
  const course = blankCourse({ title: 'Larkhollow', rulebook: { id: book, house: {} } });
  const list = numbers.map((number) => ({ id: `entry-${number}`, number, rider: '', horse: '' }));
  return { ...course, class: { ...course.class, ...(list.length === 0 ? {} : { list }) } };
}

export function cardBy(book: string, numbers: readonly string[]): ScoreCard {
  return blankCard(courseBy(book, numbers), COLUMNS);
}

export function tappedAll(card: ScoreCard, taps: readonly Tap[]): ScoreCard {
  return taps.reduce(tapped, card);
}

/** What an entry is given: a score an obstacle in order, and penalties by the number of the obstacle. */
export function given(
  number: string,
  scores: readonly (number | 'none' | null)[],
  penalties: Readonly<Record<number, readonly string[]>> = {},
): readonly Tap[] {
  const entry = `entry-${number}`;
  return scores.flatMap((score, i): Tap[] => {
    const leg = `leg-${i + 1}`;
    const faults = (penalties[i + 1] ?? []).map((penalty): Tap => ({ kind: 'penalty', entry, leg, penalty, by: 1 }));
    return [{ kind: 'score', entry, leg, score }, ...faults];
  });
}

const SCORES = [-1.5, -1, -0.5, 0, 0.5, 1, 1.5];

/** Any tap that adds to the cells of these entries: a score, or a penalty of the list. */
export function additions(card: ScoreCard): fc.Arbitrary<Tap> {
  const place = {
    entry: fc.constantFrom(...card.entries.map(({ id }) => id)),
    leg: fc.constantFrom(...card.columns.map(({ leg }) => leg)),
  };
  const { penalties } = card.scoring;
  return fc.oneof(
    fc.record({ kind: fc.constant('score' as const), ...place, score: fc.constantFrom(...SCORES) }),
    fc.record({
      kind: fc.constant('penalty' as const),
      ...place,
      penalty: fc.constantFrom(...penalties.map(({ id }) => id)),
      by: fc.constant(1 as const),
    }),
  );
}

/** A card on which every obstacle of every entry has a score, and some have penalties or a ruling. */
export function wholeCards(numbers: readonly string[], book = 'ewu'): fc.Arbitrary<ScoreCard> {
  const card = cardBy(book, numbers);
  const cell = fc.record({
    score: fc.constantFrom(...SCORES),
    penalties: fc.array(fc.constantFrom(...card.scoring.penalties.map(({ id }) => id)), { maxLength: 2 }),
  });
  const entry = fc.record({
    cells: fc.tuple(cell, cell, cell),
    ruling: fc.option(fc.constantFrom(...card.scoring.rulings.map(({ id }) => id)), { nil: undefined, freq: 4 }),
    order: fc.option(fc.integer({ min: 1, max: 3 }), { nil: undefined }),
    time: fc.option(fc.integer({ min: 60, max: 62 }), { nil: undefined }),
  });
  const all = fc.tuple(...numbers.map(() => entry));
  return fc.tuple(all, fc.constantFrom('judge' as const, 'time' as const)).map(([entries, ties]) => ({
    ...card,
    ties,
    entries: card.entries.map((each, i) => {
      const { cells, ruling, order, time } = entries[i] as (typeof entries)[number];
      return {
        ...each,
        cells: Object.fromEntries(cells.map((of, k) => [`leg-${k + 1}`, of])),
        ...(ruling === undefined ? {} : { ruling }),
        ...(order === undefined ? {} : { order }),
        ...(time === undefined ? {} : { time }),
      };
    }),
  }));
}
