import { produce } from 'immer';
import type { CardCell, CardEntry, ScoreCard } from './score-card.ts';

/** Where a judge gives something: an entry at an obstacle. */
interface Place {
  readonly entry: string;
  readonly leg: string;
}

/** One thing that a person does to a card. */
export type Tap =
  /** Null takes a score back. */
  | ({ readonly kind: 'score'; readonly score: number | 'none' | null } & Place)
  | ({ readonly kind: 'penalty'; readonly penalty: string; readonly by: 1 | -1 } & Place)
  | ({ readonly kind: 'remark'; readonly note: string } & Place)
  /** Ends the go; null: it goes on. */
  | { readonly kind: 'rule'; readonly entry: string; readonly ruling: string | null }
  /** Null clears what may be empty. */
  | { readonly kind: 'time'; readonly entry: string; readonly time: number | null }
  | { readonly kind: 'order'; readonly entry: string; readonly order: number | null }
  | { readonly kind: 'note'; readonly entry: string; readonly note: string }
  | { readonly kind: 'enter'; readonly entry: string; readonly number: string }
  | { readonly kind: 'scratch'; readonly entry: string; readonly scratched: boolean }
  /** An empty reason: it counts again. */
  | { readonly kind: 'strike'; readonly leg: string; readonly why: string }
  | { readonly kind: 'judge'; readonly judge: string }
  | { readonly kind: 'ties'; readonly ties: ScoreCard['ties'] };

/** The cell there; one is made only for what is added to it, so that taking nothing back changes nothing. */
function cellIn(entry: CardEntry, leg: string): CardCell {
  const cell = entry.cells[leg] ?? { penalties: [] };
  entry.cells[leg] = cell;
  // immer answers with its draft of it, which the object just put there is not.
  return entry.cells[leg] ?? cell;
}

/** A cell with nothing in it is no cell, so that what is taken back leaves nothing behind. */
function tidy(entry: CardEntry, leg: string): void {
  const cell = entry.cells[leg];
  if (cell !== undefined && cell.penalties.length === 0 && cell.score === undefined && cell.note === undefined) {
    delete entry.cells[leg];
  }
}

function tapPenalty(card: ScoreCard, entry: CardEntry, { leg, penalty, by }: Extract<Tap, { kind: 'penalty' }>): void {
  const order = card.scoring.penalties.map(({ id }) => id);
  if (!order.includes(penalty)) throw new Error(`score card: there is no penalty ${penalty}`);
  if (by === 1) {
    const cell = cellIn(entry, leg);
    cell.penalties = [...cell.penalties, penalty].sort((a, b) => order.indexOf(a) - order.indexOf(b));
    return;
  }
  const cell = entry.cells[leg];
  const at = cell?.penalties.indexOf(penalty) ?? -1;
  if (at >= 0) cell?.penalties.splice(at, 1);
}

function checkScore({ scoring }: ScoreCard, score: number | 'none' | null): void {
  if (typeof score !== 'number') return;
  const { least, most } = scoring.scale;
  if (score < least || score > most || !Number.isInteger(score * 2)) {
    throw new Error(`score card: a score of ${score} where halves from ${least} to ${most} are given`);
  }
}

function tapCard(card: ScoreCard, tap: Tap): void {
  if (tap.kind === 'judge') card.judge = tap.judge;
  else if (tap.kind === 'ties') card.ties = tap.ties;
  else if (tap.kind === 'strike') {
    const column = card.columns.find(({ leg }) => leg === tap.leg);
    if (column === undefined) throw new Error(`score card: there is no leg ${tap.leg}`);
    if (tap.why.trim() === '') delete column.struck;
    else column.struck = tap.why;
  } else if (tap.kind === 'enter') {
    const known = card.entries.find(({ id }) => id === tap.entry);
    if (known === undefined) card.entries.push({ id: tap.entry, number: tap.number, rider: '', horse: '', cells: {} });
    else known.number = tap.number;
  } else {
    const entry = card.entries.find(({ id }) => id === tap.entry);
    if (entry === undefined) throw new Error(`score card: there is no entry ${tap.entry}`);
    tapEntry(card, entry, tap);
  }
}

type EntryTap = Exclude<Tap, { kind: 'judge' | 'ties' | 'strike' | 'enter' }>;

function tapEntry(card: ScoreCard, entry: CardEntry, tap: EntryTap): void {
  switch (tap.kind) {
    case 'score':
      checkScore(card, tap.score);
      if (tap.score !== null) cellIn(entry, tap.leg).score = tap.score;
      else delete entry.cells[tap.leg]?.score;
      tidy(entry, tap.leg);
      return;
    case 'penalty':
      tapPenalty(card, entry, tap);
      tidy(entry, tap.leg);
      return;
    case 'remark':
      if (tap.note !== '') cellIn(entry, tap.leg).note = tap.note;
      else delete entry.cells[tap.leg]?.note;
      tidy(entry, tap.leg);
      return;
    case 'rule':
      if (tap.ruling === null) delete entry.ruling;
      else if (card.scoring.rulings.some(({ id }) => id === tap.ruling)) entry.ruling = tap.ruling;
      else throw new Error(`score card: there is no ruling ${tap.ruling}`);
      return;
    case 'time':
      if (tap.time === null) delete entry.time;
      else entry.time = tap.time;
      return;
    case 'order':
      if (tap.order === null) delete entry.order;
      else entry.order = tap.order;
      return;
    case 'note':
      if (tap.note === '') delete entry.note;
      else entry.note = tap.note;
      return;
    case 'scratch':
      if (tap.scratched) entry.scratched = true;
      else delete entry.scratched;
  }
}

/** The card after a tap; the same object where it changes nothing. Throws for an entry, leg, penalty or score that there is not. */
export function tapped(card: ScoreCard, tap: Tap): ScoreCard {
  return produce(card, (draft) => tapCard(draft, tap));
}
