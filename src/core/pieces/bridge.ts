import { FOOT, INCH } from '../measure/quantity.ts';
import { rectangle } from '../plane/ring.ts';
import { area, box, edge, stroke } from './outline.ts';
import { amount } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

/** Planks lie about this wide: common practice, no source. */
const PLANK = 8 * INCH;
/** Side of the beams that the planks are laid on. */
const BEAM = 2 * INCH;

/**
 * A deck that is walked over along x. At least 36 in wide (American Mule Association rule 216) and 6 ft long
 * (Horse Illustrated, August 2005); height: estimate.
 */
export const bridge: PieceKind = {
  id: 'bridge',
  title: 'Bridge',
  params: {
    length: { kind: 'length', label: 'Length', usual: 8 * FOOT, least: 4 * FOOT, most: 16 * FOOT },
    width: { kind: 'length', label: 'Width', usual: 4 * FOOT, least: 2.5 * FOOT, most: 8 * FOOT },
    height: { kind: 'length', label: 'Height', usual: 6 * INCH, least: 2 * INCH, most: 24 * INCH },
  },
  figure(values): Figure {
    const length = amount(values, 'length');
    const width = amount(values, 'width');
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
    const beams = [box(-length / 2, -y, length / 2, -y + BEAM), box(-length / 2, y - BEAM, length / 2, y)];
    return {
      footprint,
      marks: [area(footprint, 'timber'), ...seams, ...beams.map((beam) => area(beam, 'stripe')), edge(footprint)],
      length,
      width,
      height: amount(values, 'height'),
      stands: 'deck',
    };
  },
};
