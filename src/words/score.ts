/** What the app says of scoring: the panel at Post, and the card that a judge or a scribe taps. */
import { andList, counted } from '../core/text/sentence.ts';

export const scoreWords = {
  // The panel.
  openCard: 'Open the score card',
  about:
    'For a tablet at the judge’s table: scores and penalties are tapped, sums and placings follow. It is kept in this browser.',
  officially: 'An aid to the scribe, not the official result.',
  onPaper: 'On paper: the sheets Judge’s card and Scribe’s sheet.',
  noObstacles: 'Nothing is ridden yet: the card needs obstacles in an order.',
  entriesOf: (count: number) => counted(count, 'entry', 'entries'),
  noEntries: 'The class lists nobody: type the numbers as they come.',

  // Its frame.
  card: (title: string) => `Score card: ${title}`,
  leave: 'Leave the score card',
  entries: 'Entries',
  judge: 'Judge',
  placings: 'Placings',
  undo: 'Undo',
  look: (look: string) => `Look: ${look}`,
  looks: { plain: 'Usual', sun: 'Sun', dark: 'Dark' },

  // Notices.
  notKept: 'This browser remembers nothing: save the card as a file before you leave the page.',
  elsewhere: 'This card is judged in another tab. Here it is only shown, until that tab leaves it.',
  changed: 'The course has changed since this card was begun: its obstacles are other ones.',
  otherBook: (card: string, course: string) =>
    `The card was begun by the list of ${card}; the course now names ${course}. Clear the card to score by that.`,
  takeObstacles: 'Take the obstacles of the course',
  unreadable: (why: string) => `There is a card in this browser that cannot be read: ${why}`,
  overwrite: 'Begin a new one in its place',

  // Entries.
  number: 'Number',
  addNumber: 'Add',
  addEntry: 'Add an entry by its number',
  numberTaken: (number: string) => `${number} is on the card already.`,
  unnumbered: 'no number',
  totalSoFar: (total: string) => `${total} so far`,
  toGo: (count: number) => `${counted(count, 'obstacle')} to go`,
  statuses: {
    open: 'not judged yet',
    begun: 'not finished',
    whole: 'finished',
    'zero-score': 'zero score',
    disqualified: 'disqualified',
    scratched: 'does not ride',
  },
  onHorse: (rider: string, horse: string) => `${rider} on ${horse}`,

  // The entry that is judged.
  sums: (scores: string, penalties: string, total: string) =>
    `Scores ${scores}, penalties ${penalties}, total ${total}`,
  noTotal: 'none',
  obstacles: 'Obstacles',
  obstacle: (number: number, name: string) => `${number}. ${name}`,
  given: (score: string, penalties: string) => `score ${score}, penalties ${penalties}`,
  notGiven: 'no score yet',
  score: 'Score',
  noScore: 'No score',
  penalties: 'Penalties',
  times: (count: number) => `${count} times`,
  takeBack: (fault: string) => `Take back: ${fault}`,
  noteHere: 'Note on this obstacle',
  back: 'Back',
  next: 'Next',
  nextEntry: 'Next entry',
  struck: (why: string) => `Counts for nobody: ${why}`,
  strike: 'Counts for nobody',
  strikeWhy: 'Why, for instance a broken pole',
  strikeDo: 'Strike it for everyone',
  strikeUndo: 'Let it count again',

  // What ends a go.
  wholeGo: 'The whole go',
  endsTheGo: 'Ends the go',
  nothingEnds: 'Nothing: it counts',
  zeroFor: (fault: string) => `Zero score: ${fault}`,
  disqualifiedFor: (fault: string) => `Disqualified: ${fault}`,
  noteOfGo: 'Note on the go',
  time: 'Time on the course, seconds',
  timeRefused: 'A time is a number of seconds.',
  doesNotRide: 'Does not ride',
  correctNumber: 'Number as it is worn',

  // Placings.
  place: 'Place',
  rider: 'Rider and horse',
  total: 'Total',
  state: 'State',
  tied: 'tied',
  byOrder: 'tie broken by the judge',
  byTime: 'tie broken by the time',
  below: 'below correct goes',
  orderOf: (number: string) => `Order of ${number} among those tied`,
  judgeDecides: 'A tie stays one until the judge decides: type 1 for the entry that is before the others.',
  timeDecides: (only: string) => `The class has ${only}: the time breaks ties`,
  tiesAre: (ties: readonly string[]) => `Tied: ${ties.join('; ')}.`,
  tieOf: (place: number, numbers: readonly string[]) => `place ${place}, ${andList(numbers)}`,
  noTies: 'There is no tie.',
  judgeName: 'Judge',
  list: 'The list that is scored by',
  sourceOf: (points: string, fault: string, source: string) => `${points}: ${fault} (${source})`,

  // Files.
  files: 'Files',
  exportCsv: 'Export CSV',
  saveJson: 'Save the card',
  openJson: 'Open a card',
  cardRefused: (why: string) => `The card could not be opened. ${why}`,
  opened: (name: string) => `${name} is opened. Undo brings back the card before.`,
  saved: (name: string) => `${name} is saved.`,
  clear: 'Clear the card',
  clearAsk: 'Every score on this card goes. Undo brings them back until the page is left.',
  clearSure: 'Clear it',
  keep: 'Keep it',
  keys: 'Keys: 1 to 7 give a score, ← and → change the obstacle, Page Up and Page Down the entry.',
} as const;
