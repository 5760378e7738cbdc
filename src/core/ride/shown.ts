import { GAITS } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import type { LeadStretch, LineElement, ShownGait, ShownLead, Span } from './line.ts';

/** The longest run of consecutive elements that are all wanted. */
function longest(elements: readonly LineElement[], wanted: (element: LineElement) => boolean): Span {
  let best: Span = { from: 0, to: 0 };
  let begun: Metres | undefined;
  for (const element of elements) {
    if (!wanted(element)) {
      begun = undefined;
      continue;
    }
    begun ??= element.from;
    const to = element.from + element.length;
    if (to - begun > best.to - best.from) best = { from: begun, to };
  }
  return best;
}

/** How much of each gait the ride shows. */
export function shownGaits(elements: readonly LineElement[]): ShownGait[] {
  return GAITS.map((gait) => {
    const inGait = (element: LineElement): boolean => element.move === 'ride' && element.gait === gait;
    return {
      gait,
      total: elements.filter(inGait).reduce((sum, { length }) => sum + length, 0),
      longest: longest(elements, inGait),
      between: longest(elements, (element) => inGait(element) && element.part !== 'obstacle'),
    };
  });
}

/** How much is loped on each lead; a lope whose lead is open counts on neither. */
export function shownLeads(stretches: readonly LeadStretch[]): ShownLead[] {
  return (['left', 'right'] as const).map((lead) => ({
    lead,
    total: stretches.filter((each) => each.lead === lead).reduce((sum, { from, to }) => sum + to - from, 0),
  }));
}
