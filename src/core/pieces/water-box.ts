import { feet, inches } from '../measure/quantity.ts';
import type { Mark } from '../plane/mark.ts';
import { rectangle } from '../plane/ring.ts';
import { area, edge, stroke } from './outline.ts';
import { numberValue } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

const RIM = inches(2);

/** One ripple across the pan: a wave of three crests about a height. */
function ripple(y: number, halfLength: number, swell: number): Mark {
  const points = Array.from({ length: 25 }, (_, i) => {
    const t = i / 24;
    return { x: (2 * t - 1) * halfLength, y: y + swell * Math.sin(t * 6 * Math.PI) };
  });
  return stroke(points, 'outline');
}

/** A shallow pan that is walked through along x. 30 in wide, 4 to 6 ft long: Horse Illustrated, August 2005. */
export const waterBoxPiece: PieceKind = {
  id: 'water-box',
  title: 'Water box',
  extent: 'long',
  limits: ['water-box.width', 'water-box.length'],
  // Heavy: two carry it. Common practice, no source.
  handling: { carriers: 'two', alike: 'half-turn' },
  params: {
    length: { kind: 'length', label: 'Length', usual: feet(6), least: feet(3), most: feet(16) },
    width: { kind: 'length', label: 'Width', usual: inches(30), least: inches(24), most: feet(12) },
    depth: { kind: 'length', label: 'Depth', usual: inches(4), least: inches(1), most: inches(12) },
  },
  figure(values): Figure {
    const length = numberValue(values, 'length');
    const width = numberValue(values, 'width');
    const footprint = rectangle(length, width);
    const pan = rectangle(length - 2 * RIM, width - 2 * RIM);
    const ripples = [-0.5, 0, 0.5].map((at) =>
      ripple((at * (width - 2 * RIM)) / 1.6, (length / 2 - RIM) * 0.8, width * 0.04),
    );
    return {
      footprint,
      marks: [area(footprint, 'timber'), area(pan, 'water'), ...ripples, edge(pan), edge(footprint)],
      length,
      width,
      height: numberValue(values, 'depth'),
      stands: 'deck',
    };
  },
};
