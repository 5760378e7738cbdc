import { feet, inches } from '../measure/quantity.ts';
import { rectangle } from '../plane/ring.ts';
import { area, edge, rectangleBetween, stroke } from './outline.ts';
import { numberValue } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

/** Planks lie about this wide: common practice, no source. */
const PLANK = inches(8);
/** Side of the beams that the planks are laid on. */
const BEAM = inches(2);

/**
 * A deck that is walked over along x. At least 36 in wide (American Mule Association rule 216) and 6 ft long
 * (Horse Illustrated, August 2005); height: estimate.
 */
export const bridgePiece: PieceKind = {
  id: 'bridge',
  title: 'Bridge',
  extent: 'long',
  limits: ['bridge.width', 'bridge.length', 'mandatory.bridge'],
  isPlain: true,
  // Heavy: two carry it. Common practice, no source.
  handling: { carriers: 'two', alike: 'half-turn' },
  params: {
    length: { kind: 'length', label: 'Length', usual: feet(8), least: feet(4), most: feet(16) },
    width: { kind: 'length', label: 'Width', usual: feet(4), least: feet(2.5), most: feet(8) },
    height: { kind: 'length', label: 'Height', usual: inches(6), least: inches(2), most: inches(24) },
  },
  figure(values): Figure {
    const length = numberValue(values, 'length');
    const width = numberValue(values, 'width');
    const footprint = rectangle(length, width);
    const planks = Math.max(3, Math.round(length / PLANK));
    const y = width / 2;
    const seams = Array.from({ length: planks - 1 }, (_, i) => {
      const x = -length / 2 + ((i + 1) * length) / planks;
      return stroke([
        { x, y: -y },
        { x, y },
      ]);
    });
    const beams = [
      rectangleBetween(-length / 2, -y, length / 2, -y + BEAM),
      rectangleBetween(-length / 2, y - BEAM, length / 2, y),
    ];
    return {
      footprint,
      marks: [area(footprint, 'timber'), ...seams, ...beams.map((beam) => area(beam, 'stripe')), edge(footprint)],
      length,
      width,
      height: numberValue(values, 'height'),
      stands: 'deck',
    };
  },
};
