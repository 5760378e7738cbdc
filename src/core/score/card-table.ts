import { safeCell } from '../text/safe-cell.ts';
import { SCORE_CAUTION, type ScoreCard } from './score-card.ts';
import { type CardRow, tally } from './tally.ts';

const MINUS = '\u2212';

/** "+1½", "−½", "0", "70½": points as a judge writes them; `sign` puts a plus before what is more than nothing. */
export function pointsText(points: number, sign: 'plus' | 'none' = 'none'): string {
  const size = Math.abs(points);
  const whole = Math.floor(size);
  const half = size === whole ? '' : '½';
  const digits = whole === 0 && half !== '' ? half : `${whole}${half}`;
  const before = points < 0 ? MINUS : sign === 'plus' && points > 0 ? '+' : '';
  return `${before}${digits}`;
}

/** What a place is called when nothing else is to be said: "begun" goes and others have none. */
export const STATUS_WORDS: Readonly<Record<CardRow['status'], string>> = {
  open: 'not judged yet',
  begun: 'not finished',
  whole: 'finished',
  'zero-score': 'zero score',
  disqualified: 'disqualified',
  scratched: 'does not ride',
};

/**
 * The card as a table for spreadsheets, a row an entry in the order of go, safe from being taken for formulas. Numbers have a point and
 * a plain minus. The last row says what the table is.
 */
export function cardTable(card: ScoreCard): readonly (readonly string[])[] {
  const names = new Map(card.scoring.penalties.map(({ id, fault, points }) => [id, `${points} ${fault}`]));
  const head = [
    'Number',
    'Rider',
    'Horse',
    ...card.columns.flatMap(({ number, name, struck }) => [
      `${number}. ${name}${struck === undefined ? '' : ' (struck)'}`,
      `${number}. penalties`,
    ]),
    'Scores',
    'Penalties',
    'Total',
    'Place',
    'Tied',
    'State',
    'Ruling',
    'Note',
  ];
  const rows = tally(card).map(({ entry, scores, penalties, total, place, isTied, status, missing }) => {
    const ruling = card.scoring.rulings.find(({ id }) => id === entry.ruling);
    const notes = card.columns.flatMap(({ leg, number }) => {
      const note = entry.cells[leg]?.note;
      return note === undefined ? [] : [`${number}: ${note}`];
    });
    const state = status === 'begun' ? `${STATUS_WORDS.begun}, without ${missing.join(' ')}` : STATUS_WORDS[status];
    return [
      entry.number,
      entry.rider,
      entry.horse,
      ...card.columns.flatMap(({ leg }) => {
        const cell = entry.cells[leg];
        return [
          cell?.score === undefined ? '' : cell.score === 'none' ? 'no score' : String(cell.score),
          (cell?.penalties ?? []).map((id) => names.get(id) ?? id).join('; '),
        ];
      }),
      String(scores),
      String(penalties),
      total === undefined ? '' : String(total),
      place === undefined ? '' : String(place),
      isTied ? 'tied' : '',
      state,
      ruling?.fault ?? '',
      [...(entry.note === undefined ? [] : [entry.note]), ...notes].join('; '),
    ];
  });
  return [head, ...rows, [SCORE_CAUTION]].map((row) => row.map(safeCell));
}
