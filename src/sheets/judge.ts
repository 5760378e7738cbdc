/** The judge's card: for each entry and obstacle room to write a penalty and a score. */
import { BLANK_ROWS, cardPages, ENTRY_NAMES, PENALTY_LIST } from './card-pages.ts';
import type { Sheet } from './sheet.ts';

/** A hand writes −1½ in it, mm. */
const LEAST = 12;

export const judge: Sheet = {
  id: 'judge',
  title: 'Judge’s card',
  options: [ENTRY_NAMES, BLANK_ROWS, PENALTY_LIST],
  draw: (survey, options) =>
    cardPages(survey, options, {
      title: 'Judge’s card',
      signs: 'Judge',
      tracks: () => [{ title: 'Penalty' }, { title: 'Score' }],
      sums: ['Penalties', 'Scores', 'Total'],
      least: () => LEAST,
    }),
};
