import { feet, inches } from '../measure/quantity.ts';
import { area, circleRing, edge } from './outline.ts';
import { numberValue } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

/** A drum on its end. 23 in across and 35 in high: the usual 55 gallon drum, from memory. */
export const barrelPiece: PieceKind = {
  id: 'barrel',
  title: 'Barrel',
  extent: 'small',
  handling: { carriers: 'one', alike: 'any-turn' },
  limits: ['back.barrels.width'],
  params: {
    diameter: { kind: 'length', label: 'Diameter', usual: inches(23), least: inches(12), most: feet(4) },
    height: { kind: 'length', label: 'Height', usual: inches(35), least: inches(12), most: feet(5) },
  },
  figure(values): Figure {
    const diameter = numberValue(values, 'diameter');
    const footprint = circleRing(diameter / 2);
    const bung = diameter * 0.27;
    return {
      footprint,
      marks: [
        area(footprint, 'barrel'),
        edge(footprint),
        { kind: 'disc', at: { x: 0, y: 0 }, radius: diameter * 0.41, ink: 'outline', fill: 'rim' },
        { kind: 'disc', at: { x: bung, y: 0 }, radius: diameter * 0.06, ink: 'outline', fill: 'full' },
        { kind: 'disc', at: { x: -bung, y: 0 }, radius: diameter * 0.035, ink: 'outline', fill: 'full' },
      ],
      length: diameter,
      width: diameter,
      height: numberValue(values, 'height'),
      stands: 'standing',
    };
  },
};
