import { inches } from '../measure/quantity.ts';
import { rectangle } from '../plane/ring.ts';
import { area, edge, rectangleBetween, stroke } from './outline.ts';
import { numberValue } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

/** A letter box on a post, its door at the +x end. No published height; sizes are estimates. */
export const mailboxPiece: PieceKind = {
  id: 'mailbox',
  title: 'Mailbox',
  extent: 'small',
  handling: { carriers: 'one', alike: 'no-turn' },
  params: {
    length: { kind: 'length', label: 'Length', usual: inches(20), least: inches(12), most: inches(30) },
    width: { kind: 'length', label: 'Width', usual: inches(8), least: inches(5), most: inches(18) },
    height: { kind: 'length', label: 'Height', usual: inches(48), least: inches(30), most: inches(66) },
  },
  figure(values): Figure {
    const length = numberValue(values, 'length');
    const width = numberValue(values, 'width');
    const footprint = rectangle(length, width);
    const x = length / 2;
    const y = width / 2;
    const post = rectangle(width * 0.45, width * 0.45);
    const flag = rectangleBetween(-x * 0.1, y * 0.45, x * 0.45, y * 0.8);
    return {
      footprint,
      marks: [
        area(footprint, 'metal'),
        edge(footprint),
        stroke([
          { x: x * 0.78, y: -y },
          { x: x * 0.78, y },
        ]),
        area(post, 'timber'),
        edge(post),
        area(flag, 'stripe'),
        edge(flag),
      ],
      length,
      width,
      height: numberValue(values, 'height'),
      stands: 'standing',
    };
  },
};
