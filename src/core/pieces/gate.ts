import { feet, inches } from '../measure/quantity.ts';
import type { Point } from '../plane/point.ts';
import { rectangle } from '../plane/ring.ts';
import { arc, area, box, edge, stroke } from './outline.ts';
import { amount, option } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

/** Side of a gate post, and the thickness of its leaf. Common practice, no source. */
export const GATE_POST = inches(4);

/**
 * Two posts and the leaf between them, shut, along x. Opening and height: rule 216 of the American Mule Association
 * (6 ft or more, about 60 in).
 */
export const gate: PieceKind = {
  id: 'gate',
  title: 'Gate',
  params: {
    opening: {
      kind: 'length',
      label: 'Opening',
      says: 'Clear between the posts.',
      usual: feet(6),
      least: feet(4),
      most: feet(12),
    },
    height: { kind: 'length', label: 'Height', usual: inches(60), least: inches(40), most: inches(72) },
    latch: {
      kind: 'choice',
      label: 'Latch',
      says: 'At which post it opens.',
      usual: 'end',
      options: { end: 'At its end', start: 'At its start' },
    },
  },
  figure(values): Figure {
    const opening = amount(values, 'opening');
    const length = opening + 2 * GATE_POST;
    const footprint = rectangle(length, GATE_POST);
    const latch = option(values, 'latch') === 'end' ? 1 : -1;
    const y = GATE_POST / 2;
    const inner = opening / 2;
    const posts = [box(-length / 2, -y, -inner, y), box(inner, -y, length / 2, y)];
    const hinge: Point = { x: -latch * inner, y: 0 };
    const shut = latch === 1 ? 0 : Math.PI;
    // A quarter turn each way: a gate is pushed from either side.
    const swings = [1, -1].map((way) => stroke(arc(hinge, opening, [shut, shut + (way * Math.PI) / 2]), 'faint'));
    const rail = box(-inner, -y * 0.5, inner, y * 0.5);
    const catchAt = latch * (inner - GATE_POST * 0.8);
    return {
      footprint,
      marks: [
        ...swings,
        area(rail, 'timber'),
        edge(rail),
        ...posts.flatMap((post) => [area(post, 'metal'), edge(post)]),
        { kind: 'disc', at: hinge, radius: GATE_POST * 0.3, ink: 'outline', fill: 'full' },
        stroke(
          [
            { x: catchAt, y: -GATE_POST },
            { x: catchAt, y: GATE_POST },
          ],
          'metal',
        ),
      ],
      length,
      width: GATE_POST,
      height: amount(values, 'height'),
      stands: 'standing',
    };
  },
};
