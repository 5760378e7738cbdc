/**
 * The style of each ink on paper, in black and white. The gaits are told apart by their strokes alone: dots, long
 * dashes, a solid line, dash-dot, a ladder of bars; nothing depends on a shade of grey that a copier would lose.
 */
import type { Ink } from '../core/plane/mark.ts';

export interface LineStyle {
  /** Grey of strokes and letters, `#rrggbb`. */
  readonly stroke: string;
  /** Grey of areas and full discs. */
  readonly fill: string;
  /** Stroke width, mm, unless the mark says its own. */
  readonly width: number;
  /** Dash and gap lengths, mm; none: solid. */
  readonly dash?: readonly number[];
  readonly cap: 'butt' | 'round';
}

const BLACK = '#000000';
const WHITE = '#ffffff';

function solid(stroke: string, width: number, fill = stroke): LineStyle {
  return { stroke, fill, width, cap: 'butt' };
}

/** A dash of this length with round caps is a dot. PDF allows no dash of length 0 through every writer. */
const DOT = 0.01;

export const LINE_STYLES: Readonly<Record<Ink, LineStyle>> = {
  timber: { stroke: BLACK, fill: WHITE, width: 0.18, cap: 'butt' },
  stripe: solid('#6b6b6b', 0.18),
  marker: solid(BLACK, 0.18, '#4a4a4a'),
  metal: solid(BLACK, 0.3),
  barrel: solid(BLACK, 0.2, '#d4d4d4'),
  planting: solid('#3c3c3c', 0.2, '#b4b4b4'),
  water: solid(BLACK, 0.2, '#e4e4e4'),
  rail: solid(BLACK, 0.7),
  outline: solid(BLACK, 0.18),
  walk: { stroke: BLACK, fill: BLACK, width: 0.75, dash: [DOT, 1.7], cap: 'round' },
  jog: { stroke: BLACK, fill: BLACK, width: 0.5, dash: [3.4, 1.5], cap: 'butt' },
  lope: solid(BLACK, 0.6),
  back: { stroke: BLACK, fill: BLACK, width: 0.5, dash: [2.2, 1.1, DOT, 1.1], cap: 'round' },
  'side-pass': { stroke: BLACK, fill: BLACK, width: 2, dash: [0.35, 0.95], cap: 'butt' },
  turn: solid(BLACK, 0.5),
  work: { stroke: BLACK, fill: BLACK, width: 0.4, dash: [0.8, 0.6], cap: 'butt' },
  landing: solid('#555555', 0.2),
  words: solid(BLACK, 0.2),
  faint: solid('#8c8c8c', 0.15, '#ececec'),
  measure: solid('#333333', 0.18),
};

/** Width of a stroke that says nothing, mm. */
export function strokeWidth(ink: Ink, width: number | undefined): number {
  return width ?? LINE_STYLES[ink].width;
}
