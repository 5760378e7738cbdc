/** What stands under a card: the list of penalties, what ends a go, and where the list is from. */
import { pointsText } from '../core/score/card-table.ts';
import type { CardScoring } from '../core/score/score-card.ts';
import { uncapitalized } from '../core/text/sentence.ts';
import type { PlacedColumn } from './card-grid.ts';
import type { TextItem } from './flow.ts';
import { SMALLEST_FONT_SIZE } from './lettering.ts';

const SMALL = SMALLEST_FONT_SIZE;

/** Faults of one price, the first with its capital. */
function listed(faults: readonly string[]): string {
  return faults.map((fault, i) => (i === 0 ? fault : uncapitalized(fault))).join('; ');
}

/** The list by points; then the names that a head had no room for, and the sources. */
export function legendItems(scoring: CardScoring, cut: readonly PlacedColumn[]): readonly TextItem[] {
  const { penalties, rulings, scale, about, base } = scoring;
  const points = [...new Set(penalties.map((each) => each.points))];
  const item = (hang: string, faults: readonly string[]): readonly TextItem[] =>
    faults.length === 0 ? [] : [{ kind: 'paragraph', hang, text: `${listed(faults)}.`, size: SMALL }];
  const ruled = (effect: string) => rulings.filter((each) => each.effect === effect).map(({ fault }) => fault);
  const steps = Object.entries(scale.words)
    .map(([step, word]) => [Number(step), word] as const)
    .toSorted(([a], [b]) => a - b);
  const words = steps.map(([step, word]) => `${pointsText(step, 'plus')} ${word}`).join(', ');
  const sources = [...new Set([...penalties, scale].map(({ source }) => source))];
  return [
    ...points.flatMap((each) =>
      item(
        pointsText(each),
        penalties.filter((penalty) => penalty.points === each).map(({ fault }) => fault),
      ),
    ),
    ...item('0', ruled('zero-score')),
    ...item('DQ', ruled('disqualified')),
    ...item('+ −', [`${words}; total: ${base} and scores less penalties`]),
    ...cut.map(({ number, name }): TextItem => ({ kind: 'paragraph', hang: `${number}.`, text: name, size: SMALL })),
    { kind: 'paragraph', text: `${about.join(' ')} Sources: ${sources.join('; ')}.`, size: SMALL },
  ];
}
