import type { PlacedPiece } from '../course/placed.ts';
import type { Horse } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import { ringBounds } from '../plane/ring.ts';
import { ringPointDistance } from '../plane/segment.ts';
import type { HoofPrint } from './hoof-print.ts';

/** A hoof that comes down on a pole, or within its own width of one. */
export interface PrintNote {
  readonly kind: 'meets' | 'near';
  readonly print: HoofPrint;
  /** Key of the pole. */
  readonly key: string;
  /** Metres from the hoof's edge to the pole; below 0 it is on it. */
  readonly clear: Metres;
  /** How likely the hoof meets the pole, 0 … 1, as the horse's strides differ. */
  readonly likelihood: number;
}

/** Samples across ±4 standard deviations: the same every time, and closer together than a hoof is wide. */
const SAMPLES = 161;
const WIDEST_DEVIATION = 4;

/** The share of all strides in which the hoof meets the pole, when its print is spread along its way. */
function likelihoodOf({ point, carried, spread }: HoofPrint, pole: PlacedPiece, radius: Metres): number {
  let [met, all] = [0, 0];
  for (let i = 0; i < SAMPLES; i += 1) {
    const z = WIDEST_DEVIATION * ((2 * i + 1) / SAMPLES - 1);
    const weight = Math.exp((-z * z) / 2);
    const off = z * spread;
    const at = { x: point.x + off * Math.cos(carried), y: point.y + off * Math.sin(carried) };
    all += weight;
    if (ringPointDistance(pole.footprint, at) <= radius) met += weight;
  }
  return met / all;
}

/** Prints that meet a pole or come within a hoof's width of it, in the order of the go. */
export function printNotes(prints: readonly HoofPrint[], pieces: readonly PlacedPiece[], horse: Horse): PrintNote[] {
  const width = horse.hoof.value;
  const radius = width / 2;
  const margin = radius + width;
  const poles = pieces
    .filter(({ kind }) => kind.id === 'pole')
    .map((pole) => ({ pole, bounds: ringBounds(pole.footprint) }));
  return prints.flatMap((print) =>
    poles.flatMap(({ pole, bounds: box }): PrintNote[] => {
      const { x, y } = print.point;
      if (x < box.minX - margin || x > box.maxX + margin || y < box.minY - margin || y > box.maxY + margin) return [];
      const clear = ringPointDistance(pole.footprint, print.point) - radius;
      if (clear >= width) return [];
      const likelihood = likelihoodOf(print, pole, radius);
      return [{ kind: clear <= 0 ? 'meets' : 'near', print, key: pole.key, clear, likelihood }];
    }),
  );
}
