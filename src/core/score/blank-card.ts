import type { Course } from '../course/course.ts';
import { cardScoring } from './card-scoring.ts';
import {
  CARD_FORMAT,
  CARD_VERSION,
  type CardColumn,
  type CardEntry,
  SCORE_CAUTION,
  type ScoreCard,
} from './score-card.ts';

function columnOf({ leg, number, name }: CardColumn): CardColumn {
  return { leg, number, name };
}

/** The entries of the class in their order, each with what the card has of it; then those that only the card has. */
function withList({ class: { list = [] } }: Course, entries: readonly CardEntry[]): CardEntry[] {
  const byId = new Map(entries.map((each) => [each.id, each]));
  const listed = list.map(({ id, number, rider, horse, scratched }): CardEntry => {
    const before = byId.get(id) ?? { cells: {} };
    // Who was found missing at the gate is so on the card alone.
    return { ...before, id, number, rider, horse, ...(scratched === undefined ? {} : { scratched }) };
  });
  const ids = new Set(list.map(({ id }) => id));
  return [...listed, ...entries.filter(({ id }) => !ids.has(id))];
}

/** An empty card for the shown layout. `columns` are its obstacles in the order of the ride. */
export function blankCard(course: Course, columns: readonly CardColumn[]): ScoreCard {
  const layout = course.layouts.find(({ id }) => id === course.current);
  const { show, title, level, date } = course.class;
  return {
    format: CARD_FORMAT,
    version: CARD_VERSION,
    caution: SCORE_CAUTION,
    course: course.title,
    layout: layout?.title ?? '',
    class: { show, title, level, date },
    judge: '',
    scoring: cardScoring(course.rulebook),
    ties: 'judge',
    columns: columns.map(columnOf),
    entries: withList(course, []),
  };
}

/** The same card with who rides, as the class lists them now. Answers with the same object where nothing differs. */
export function withEntriesOf(course: Course, card: ScoreCard): ScoreCard {
  const entries = withList(course, card.entries);
  const isSame =
    entries.length === card.entries.length &&
    entries.every((entry, i) => {
      const before = card.entries[i];
      return (
        before?.id === entry.id &&
        before.number === entry.number &&
        before.rider === entry.rider &&
        before.horse === entry.horse &&
        before.scratched === entry.scratched
      );
    });
  return isSame ? card : { ...card, entries };
}

/** Whether the obstacles, by leg and name, are those of the card. */
export function hasColumns({ columns }: ScoreCard, now: readonly CardColumn[]): boolean {
  const words = (list: readonly CardColumn[]) => JSON.stringify(list.map(({ leg, name }) => [leg, name]));
  return words(columns) === words(now);
}

/** The card with the obstacles as they are now. What was given stays with its leg; of a leg that is gone it is kept out of sight. */
export function withColumns(card: ScoreCard, now: readonly CardColumn[]): ScoreCard {
  const struck = new Map(card.columns.map((each) => [each.leg, each.struck]));
  return {
    ...card,
    columns: now.map((column) => {
      const why = struck.get(column.leg);
      return { ...columnOf(column), ...(why === undefined ? {} : { struck: why }) };
    }),
  };
}

/** Whether nobody was given anything yet. */
function isUntouched({ columns, entries }: ScoreCard): boolean {
  const isEmpty = ({ cells, ruling, note, time }: CardEntry) =>
    Object.keys(cells).length === 0 && ruling === undefined && note === undefined && time === undefined;
  return entries.every(isEmpty) && columns.every(({ struck }) => struck === undefined);
}

/**
 * A card as it goes on: with who rides now, and as long as nothing is given, with the obstacles and the rule book of the course
 * too. Once it is begun it keeps those that it was begun with.
 */
export function currentCard(course: Course, columns: readonly CardColumn[], card: ScoreCard): ScoreCard {
  const now = withEntriesOf(course, card);
  return isUntouched(now) ? { ...blankCard(course, columns), judge: now.judge, entries: now.entries } : now;
}
