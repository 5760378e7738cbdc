import type { Band } from '../../core/checks/check.ts';
import { checkWords } from '../../words/check.ts';

/** The gauge is drawn on a strip of this width; it grows with the panel. */
export const GAUGE_WIDTH = 244;
const EDGE = 4;
/** About the width of a letter of a label. */
const LETTER = 6.1;
const LEAST_BAND = 3;
/** Free ends on both sides, in parts of what has to be shown; an open end of a band takes more. */
const PADDING = 0.16;
const OPEN_PADDING = 0.6;

interface GaugeBand {
  readonly from: number;
  readonly to: number;
  readonly label: string;
  /** Middle of the label. */
  readonly at: number;
  /** Labels that would touch stand in two rows. */
  readonly row: 0 | 1;
  readonly isOpenBelow: boolean;
  readonly isOpenAbove: boolean;
}

/** Where everything stands on the gauge, in its own units. */
export interface GaugeLayout {
  readonly bands: readonly GaugeBand[];
  readonly needle: number;
  readonly measured: string;
  /** Middle of the measured label. */
  readonly measuredAt: number;
  /** The whole gauge in a sentence. */
  readonly about: string;
}

interface BandEnds {
  readonly least: number;
  readonly most: number;
}

/** The band, and where whole multiples count the two that stand about the value. */
function endsNear({ least, most, multiples }: Band, value: number): readonly BandEnds[] {
  const one = { least: least ?? Number.NEGATIVE_INFINITY, most: most ?? Number.POSITIVE_INFINITY };
  if (!multiples || least === undefined || most === undefined || least <= 0) return [one];
  const below = Math.max(1, Math.floor(value / most));
  return [below, below + 1].map((n) => ({ least: n * least, most: n * most }));
}

function endsWords({ least, most }: BandEnds, print: (value: number) => string): string {
  if (least === most) return print(least);
  if (!Number.isFinite(least)) return checkWords.atMost(print(most));
  return Number.isFinite(most) ? checkWords.range(print(least), print(most)) : checkWords.atLeast(print(least));
}

/** A label of this text kept on the strip. */
function clampedLabel(text: string, at: number): number {
  const half = (text.length * LETTER) / 2;
  return Math.min(GAUGE_WIDTH - EDGE - half, Math.max(EDGE + half, at));
}

/** The allowed bands and the measured value on one strip; absent where there is nothing between which a value could lie. */
export function gaugeLayout(
  measured: number,
  band: Band,
  { print, text }: { readonly print: (value: number) => string; readonly text: string },
): GaugeLayout | undefined {
  if (band.least === undefined && (band.most === undefined || band.most <= 0)) return undefined;
  const ends = endsNear(band, measured);
  const shown = [measured, ...ends.flatMap(({ least, most }) => [least, most])].filter(Number.isFinite);
  const [low, high] = [Math.min(...shown), Math.max(...shown)];
  const span = high - low || Math.abs(high) / 2 || 1;
  const from = low - span * (band.least === undefined ? OPEN_PADDING : PADDING);
  const to = high + span * (band.most === undefined ? OPEN_PADDING : PADDING);
  const place = (value: number): number =>
    EDGE + ((Math.min(to, Math.max(from, value)) - from) / (to - from)) * (GAUGE_WIDTH - 2 * EDGE);
  let filled = Number.NEGATIVE_INFINITY;
  const bands = ends.map((each): GaugeBand => {
    const label = endsWords(each, print);
    const [a, b] = [place(each.least), place(each.most)];
    const at = clampedLabel(label, (a + b) / 2);
    const half = (label.length * LETTER) / 2;
    const row = at - half < filled ? 1 : 0;
    filled = at + half;
    return {
      from: a,
      to: Math.max(b, a + LEAST_BAND),
      label,
      at,
      row,
      isOpenBelow: !Number.isFinite(each.least),
      isOpenAbove: !Number.isFinite(each.most),
    };
  });
  return {
    bands,
    needle: place(measured),
    measured: text,
    measuredAt: clampedLabel(text, place(measured)),
    about: checkWords.measuredAllowed(
      text,
      bands.map(({ label }) => label).join(', or '),
      band.multiples ? checkWords.orAnotherWholeMultiple : '',
    ),
  };
}
