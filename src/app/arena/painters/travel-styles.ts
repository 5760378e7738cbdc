import type { Gait } from '../../../core/horses/horse.ts';
import type { Ink } from '../../../core/plane/mark.ts';
import type { LineElement } from '../../../core/ride/line.ts';
import { arenaWords } from '../../../words/arena.ts';
import { terms } from '../../../words/terms.ts';

/** How a way of going is drawn, in the arena and on the strip: told apart without colour. Pixels. */
export interface TravelStyle {
  readonly ink: Ink;
  readonly dash: readonly number[];
  readonly width: number;
  readonly cap: 'round' | 'butt';
  readonly word: string;
}

export type TravelKind = Gait | 'back' | 'side-pass' | 'turn' | 'work';

export const TRAVEL_STYLES: Readonly<Record<TravelKind, TravelStyle>> = {
  walk: { ink: 'walk', dash: [0.1, 5], width: 2.8, cap: 'round', word: terms.walk },
  jog: { ink: 'jog', dash: [9, 5], width: 2.2, cap: 'butt', word: terms.jog },
  lope: { ink: 'lope', dash: [], width: 2.4, cap: 'butt', word: terms.lope },
  back: { ink: 'back', dash: [8, 4, 0.1, 4], width: 2.6, cap: 'round', word: arenaWords.back },
  'side-pass': { ink: 'side-pass', dash: [1.6, 4], width: 8, cap: 'butt', word: arenaWords.sidePass },
  turn: { ink: 'turn', dash: [], width: 2.4, cap: 'butt', word: arenaWords.turn },
  work: { ink: 'work', dash: [4, 3], width: 2.2, cap: 'butt', word: arenaWords.gate },
};

export function travelKind(element: Pick<LineElement, 'move' | 'gait'>): TravelKind {
  return element.move === 'ride' ? element.gait : element.move;
}
