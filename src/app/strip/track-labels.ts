import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit, Metres } from '../../core/measure/quantity.ts';
import type { LineElement } from '../../core/ride/line.ts';
import { stripWords as words } from '../../words/strip.ts';
import { terms } from '../../words/terms.ts';
import { TRAVEL_STYLES, type TravelKind, travelKind } from '../arena/painters/travel-styles.ts';
import type { StripGap } from './track.ts';

/** Words under the track: of one gap, of all gaps of a leg in one, of a gait, or of an end. Pixels from the left. */
export interface StripLabel {
  readonly key: string;
  readonly text: string;
  readonly x: number;
  readonly row: 0 | 1;
  readonly about: { readonly fit: StripGap['fit'] } | { readonly way: TravelKind } | 'end';
}

/** A stretch in one gait whose word may stand under it, `at` its middle along the line. */
export interface StripWord {
  readonly at: Metres;
  readonly length: Metres;
  readonly way: TravelKind;
}

/** The stretches between obstacles, those of one gait that follow each other as one. */
export function stripWords(elements: readonly LineElement[]): readonly StripWord[] {
  const found: { from: Metres; to: Metres; way: TravelKind }[] = [];
  for (const element of elements) {
    if (element.part === 'obstacle' || element.length === 0) continue;
    const way = travelKind(element);
    const last = found.at(-1);
    const to = element.from + element.length;
    if (last?.way === way && Math.abs(last.to - element.from) < 1e-6) last.to = to;
    else found.push({ from: element.from, to, way });
  }
  return found.map(({ from, to, way }) => ({ at: (from + to) / 2, length: to - from, way }));
}

/** About the width of a letter, pixels; a little wide, so that words surely stay apart. */
const LETTER = 7.2;
/** Free room beside words, pixels. */
const APART = 5;

interface StripLabelRequest {
  readonly label: Omit<StripLabel, 'row'>;
  readonly row: 0 | 1;
}

const halfOf = (text: string): number => (text.length * LETTER) / 2;

/** Which parts of the two rows are taken. */
function rowPacker() {
  const taken: [number, number][][] = [[], []];
  const span = ({ label, row }: StripLabelRequest): [number, number, number] => {
    const half = halfOf(label.text) + APART / 2;
    return [label.x - half, label.x + half, row];
  };
  const isFree = (request: StripLabelRequest): boolean => {
    const [from, to, row] = span(request);
    return (taken[row] ?? []).every(([left, right]) => to <= left || from >= right);
  };
  return {
    /** Places all of the labels, or none: true when there was room for all. */
    take(requests: readonly StripLabelRequest[]): boolean {
      const before = taken.map((row) => [...row]);
      for (const request of requests) {
        if (!isFree(request)) {
          taken.splice(0, 2, ...before);
          return false;
        }
        const [from, to, row] = span(request);
        taken[row]?.push([from, to]);
      }
      return true;
    },
  };
}

/**
 * The words that have room under the track, none over another: the ends first, then each leg's gaps one by one, in two
 * rows by turns, or all in one; then the gaits. What has no room is left out; the table and the pointer still show it.
 */
export function stripLabels(
  {
    gaps,
    words,
    length,
  }: { readonly gaps: readonly StripGap[]; readonly words: readonly StripWord[]; readonly length: Metres },
  { scale, edge, unit }: { readonly scale: number; readonly edge: number; readonly unit: LengthUnit },
): readonly StripLabel[] {
  const x = (at: Metres) => edge + at * scale;
  const rows = rowPacker();
  const placed: StripLabel[] = [];
  const put = (requests: readonly StripLabelRequest[]): boolean => {
    const fits = rows.take(requests);
    if (fits) placed.push(...requests.map(({ label, row }) => ({ ...label, row })));
    return fits;
  };
  put([{ label: { key: 'start', text: terms.start, x: x(0), about: 'end' }, row: 0 }]);
  put([{ label: { key: 'end', text: 'End', x: x(length), about: 'end' }, row: 0 }]);
  for (const own of byLeg(gaps)) {
    const each = own.map(({ gap, index, fit }) => ({
      key: `gap ${index}`,
      text: printLength(gap.taped, unit),
      x: x((gap.from + gap.to) / 2),
      about: { fit },
    }));
    const all = joinedLabel(own, { x, unit });
    const one = each.map((label): StripLabelRequest => ({ label, row: 0 }));
    const turns = each.map((label, place): StripLabelRequest => ({ label, row: place % 2 === 0 ? 0 : 1 }));
    const inOne = () => all.some((label) => put([{ label, row: 0 }]) || put([{ label, row: 1 }]));
    const areAlike = new Set(each.map(({ text }) => text)).size === 1;
    // Gaps that differ are worth a second row each; those that are alike are said once.
    if (!put(one)) areAlike ? inOne() || put(turns) : put(turns) || inOne();
  }
  words.forEach(({ at, length: long, way }, index) => {
    const text = TRAVEL_STYLES[way].word;
    const isRoomy = long * scale > 2 * halfOf(text) + APART;
    if (isRoomy) put([{ label: { key: `word ${index}`, text, x: x(at), about: { way } }, row: 0 }]);
  });
  return placed;
}

function byLeg(gaps: readonly StripGap[]): readonly (readonly StripGap[])[] {
  const legs = new Map<number, StripGap[]>();
  for (const each of gaps) legs.set(each.gap.leg, [...(legs.get(each.gap.leg) ?? []), each]);
  return [...legs.values()];
}

/** All gaps of a leg in one label, the longer wording first: `4 gaps of 3' 3"`, `4 × 3' 3"`. */
function joinedLabel(
  own: readonly StripGap[],
  { x, unit }: { readonly x: (at: Metres) => number; readonly unit: LengthUnit },
): readonly Omit<StripLabel, 'row'>[] {
  const [first] = own;
  const last = own.at(-1);
  if (first === undefined || last === undefined) return [];
  const sizes = own.map(({ gap }) => gap.taped);
  const least = printLength(Math.min(...sizes), unit);
  const most = printLength(Math.max(...sizes), unit);
  const size = least === most ? least : words.range(least, most);
  const texts = own.length === 1 ? [size] : [words.gapsOf(own.length, size), `${own.length} × ${size}`];
  const fit = (['off', 'poor'] as const).find((bad) => own.some((each) => each.fit === bad)) ?? 'good';
  const at = x((first.gap.from + last.gap.to) / 2);
  return texts.map((text) => ({ key: `gaps ${first.index}`, text, x: at, about: { fit } }));
}

/** Where the numbers stand: at their obstacles, but never one over another and none beyond `most`. */
export function numberPlaces(
  wanted: readonly number[],
  { apart, most }: { readonly apart: number; readonly most: number },
): readonly number[] {
  const places: number[] = [];
  for (const want of wanted) places.push(Math.max(want, (places.at(-1) ?? Number.NEGATIVE_INFINITY) + apart));
  let limit = most;
  for (let index = places.length - 1; index >= 0; index -= 1) {
    places[index] = Math.min(places[index] ?? 0, limit);
    limit = (places[index] ?? 0) - apart;
  }
  return places;
}
