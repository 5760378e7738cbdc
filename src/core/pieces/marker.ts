import { FOOT, INCH } from '../measure/quantity.ts';
import { rectangle } from '../plane/ring.ts';
import { area, edge } from './outline.ts';
import { amount } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

/** A cone on a square base. Height: estimate, the tall kind that a rider sees over a horse's neck. */
export const marker: PieceKind = {
  id: 'marker',
  title: 'Marker',
  params: {
    base: {
      kind: 'length',
      label: 'Base',
      says: 'The side of its square foot.',
      usual: 1 * FOOT,
      least: 6 * INCH,
      most: 2 * FOOT,
    },
    height: { kind: 'length', label: 'Height', usual: 28 * INCH, least: 6 * INCH, most: 5 * FOOT },
  },
  figure(values): Figure {
    const base = amount(values, 'base');
    const footprint = rectangle(base, base);
    const at = { x: 0, y: 0 };
    return {
      footprint,
      marks: [
        area(footprint, 'marker'),
        edge(footprint),
        { kind: 'disc', at, radius: base * 0.36, ink: 'outline', fill: 'rim' },
        { kind: 'disc', at, radius: base * 0.22, ink: 'stripe', fill: 'full' },
        { kind: 'disc', at, radius: base * 0.1, ink: 'outline', fill: 'full' },
      ],
      length: base,
      width: base,
      height: amount(values, 'height'),
      stands: 'standing',
    };
  },
};
