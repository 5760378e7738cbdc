/** The scribe's sheet: penalties by points to be ticked as they are called, the score, and the sum so far. */
import { pointsText } from '../core/score/card-table.ts';
import type { CardScoring } from '../core/score/score-card.ts';
import { BLANK_ROWS, cardPages, ENTRY_NAMES, PENALTY_LIST } from './card-pages.ts';
import type { Sheet } from './sheet.ts';

/** A tick beside a figure, mm. */
const TICK = 4.2;

/** What a penalty of the list may cost. */
function points({ penalties }: CardScoring): readonly string[] {
  return [...new Set(penalties.map((each) => each.points))].map((each) => pointsText(each));
}

export const scribe: Sheet = {
  id: 'scribe',
  title: 'Scribe’s sheet',
  options: [ENTRY_NAMES, BLANK_ROWS, PENALTY_LIST],
  draw: (survey, options) =>
    cardPages(survey, options, {
      title: 'Scribe’s sheet',
      signs: 'Scribe',
      tracks: (scoring) => [{ title: 'Penalty', ticks: points(scoring) }, { title: 'Score' }, { title: 'So far' }],
      sums: ['Penalties', 'Total'],
      least: (scoring) => TICK * points(scoring).length,
    }),
};
