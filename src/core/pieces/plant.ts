import { feet, inches } from '../measure/quantity.ts';
import type { Mark } from '../plane/mark.ts';
import type { Point } from '../plane/point.ts';
import { area, circleRing, edge, stroke } from './outline.ts';
import { numberValue } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

const LEAVES = 7;

/** One leaf from the middle outwards: a pointed oval, with its rib. */
function leaf(length: number, angle: number): Mark[] {
  const along = (r: number, off: number): Point => ({
    x: r * Math.cos(angle) - off * Math.sin(angle),
    y: r * Math.sin(angle) + off * Math.cos(angle),
  });
  const wide = length * 0.2;
  const ring = [
    along(length * 0.12, 0),
    along(length * 0.4, -wide),
    along(length * 0.7, -wide * 0.9),
    along(length, 0),
    along(length * 0.7, wide * 0.9),
    along(length * 0.4, wide),
  ];
  return [area(ring, 'planting'), edge(ring), stroke([along(length * 0.2, 0), along(length * 0.85, 0)], 'faint')];
}

/** Flowers or a shrub in a pot, drawn as a rosette as wide as it spreads. Sizes: estimate. */
export const plantPiece: PieceKind = {
  id: 'plant',
  title: 'Plant',
  extent: 'small',
  handling: { carriers: 'one', alike: 'any-turn' },
  params: {
    spread: { kind: 'length', label: 'Spread', usual: feet(2), least: inches(6), most: feet(8) },
    height: { kind: 'length', label: 'Height', usual: feet(2), least: inches(6), most: feet(10) },
  },
  figure(values): Figure {
    const spread = numberValue(values, 'spread');
    const radius = spread / 2;
    return {
      footprint: circleRing(radius),
      marks: [
        ...Array.from({ length: LEAVES }, (_, i) => leaf(radius, (2 * Math.PI * i) / LEAVES + Math.PI / 2)).flat(),
        { kind: 'disc', at: { x: 0, y: 0 }, radius: radius * 0.2, ink: 'planting', fill: 'full' },
        { kind: 'disc', at: { x: 0, y: 0 }, radius: radius * 0.2, ink: 'outline', fill: 'rim' },
      ],
      length: spread,
      width: spread,
      height: numberValue(values, 'height'),
      stands: 'standing',
    };
  },
};
