import { feet, inches } from '../measure/quantity.ts';
import { rectangle } from '../plane/ring.ts';
import { area, edge, rectangleBetween, stroke } from './outline.ts';
import { numberValue } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

/** A standard: an upright on crossed feet. Its foot covers a square. Sizes: estimate. */
export const postPiece: PieceKind = {
  id: 'post',
  title: 'Post',
  extent: 'small',
  handling: { carriers: 'one', alike: 'any-turn' },
  params: {
    foot: {
      kind: 'length',
      label: 'Foot',
      says: 'The side of the square that its feet cover.',
      usual: inches(18),
      least: inches(4),
      most: feet(3),
    },
    thickness: { kind: 'length', label: 'Thickness', usual: inches(4), least: inches(2), most: inches(12) },
    height: { kind: 'length', label: 'Height', usual: feet(5), least: feet(1), most: feet(8) },
  },
  figure(values): Figure {
    const thickness = numberValue(values, 'thickness');
    const foot = Math.max(numberValue(values, 'foot'), thickness);
    const footprint = rectangle(foot, foot);
    const half = foot / 2;
    const beam = Math.min(thickness, foot) / 4;
    const feet = [rectangleBetween(-half, -beam, half, beam), rectangleBetween(-beam, -half, beam, half)];
    const upright = rectangle(thickness, thickness);
    const corner = thickness / 2;
    return {
      footprint,
      marks: [
        ...feet.flatMap((each) => [area(each, 'timber'), edge(each)]),
        area(upright, 'metal'),
        edge(upright),
        stroke([
          { x: -corner, y: -corner },
          { x: corner, y: corner },
        ]),
        stroke([
          { x: -corner, y: corner },
          { x: corner, y: -corner },
        ]),
      ],
      length: foot,
      width: foot,
      height: numberValue(values, 'height'),
      stands: 'standing',
    };
  },
};
