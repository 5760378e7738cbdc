import { feet, inches } from '../measure/quantity.ts';
import { rectangle } from '../plane/ring.ts';
import { area, edge } from './outline.ts';
import { numberValue } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

/** A cone on a square base. Height: estimate, the tall kind that a rider sees over a horse's neck. */
export const markerPiece: PieceKind = {
  id: 'marker',
  title: 'Marker',
  extent: 'small',
  // One person takes a few cones, one in the other. Common practice, no source.
  handling: { carriers: 'several', alike: 'any-turn', isSpared: true },
  params: {
    base: {
      kind: 'length',
      label: 'Base',
      says: 'The side of its square foot.',
      usual: feet(1),
      least: inches(6),
      most: feet(2),
    },
    height: { kind: 'length', label: 'Height', usual: inches(28), least: inches(6), most: feet(5) },
  },
  figure(values): Figure {
    const base = numberValue(values, 'base');
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
      height: numberValue(values, 'height'),
      stands: 'standing',
    };
  },
};
