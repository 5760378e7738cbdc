import { feet, inches } from '../measure/quantity.ts';
import type { Point } from '../plane/point.ts';
import { rectangle } from '../plane/ring.ts';
import { arc, area, edge, rectangleBetween, stroke } from './outline.ts';
import { choiceValue, numberValue, type Values } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

/** Side of a gate post, and the thickness of its leaf. Common practice, no source. */
const GATE_POST = inches(4);

/** The foot of a rope gate's standard, which stands by itself. Estimate. */
const STANDARD_FOOT = inches(16);

/**
 * Two posts and the leaf between them, shut, along x; or two standards with a rope. A rope is allowed by the same rule;
 * its standards are about 6 ft apart (trade press). Opening and height: rule 216 of the American Mule Association
 * (6 ft or more, about 60 in).
 */
export const gatePiece: PieceKind = {
  id: 'gate',
  title: 'Gate',
  extent: 'long',
  limits: ['gate.height', 'gate.opening', 'mandatory.gate'],
  isPlain: true,
  // Heavy: two carry it (common practice, no source). With its latch at the other end it is the same gate turned around.
  handling: {
    carriers: 'two',
    alike: 'no-turn',
    rigging: ['latch'],
    turnedBy: (values) => (choiceValue(values, 'latch') === 'end' ? 0 : Math.PI),
  },
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
    style: {
      kind: 'choice',
      label: 'Style',
      later: true,
      usual: 'leaf',
      options: { leaf: 'A leaf between posts', rope: 'A rope between standards' },
    },
  },
  figure(values): Figure {
    if (values.style === 'rope') return ropeGate(values);
    const opening = numberValue(values, 'opening');
    const length = opening + 2 * GATE_POST;
    const footprint = rectangle(length, GATE_POST);
    const latch = choiceValue(values, 'latch') === 'end' ? 1 : -1;
    const y = GATE_POST / 2;
    const inner = opening / 2;
    const posts = [rectangleBetween(-length / 2, -y, -inner, y), rectangleBetween(inner, -y, length / 2, y)];
    const hinge: Point = { x: -latch * inner, y: 0 };
    const shut = latch === 1 ? 0 : Math.PI;
    // A quarter turn each way: a gate is pushed from either side.
    const swings = [1, -1].map((way) => stroke(arc(hinge, opening, [shut, shut + (way * Math.PI) / 2]), 'faint'));
    const rail = rectangleBetween(-inner, -y * 0.5, inner, y * 0.5);
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
      height: numberValue(values, 'height'),
      stands: 'standing',
    };
  },
};

/** Two standards on crossed feet, and the rope from the one, where it is tied, to the hook of the other. */
function ropeGate(values: Values): Figure {
  const opening = numberValue(values, 'opening');
  const length = opening + 2 * STANDARD_FOOT;
  const latch = choiceValue(values, 'latch') === 'end' ? 1 : -1;
  const half = STANDARD_FOOT / 2;
  const beam = GATE_POST / 4;
  const standard = (x: number) => [
    rectangleBetween(x - half, -beam, x + half, beam),
    rectangleBetween(x - beam, -half, x + beam, half),
    rectangleBetween(x - GATE_POST / 2, -GATE_POST / 2, x + GATE_POST / 2, GATE_POST / 2),
  ];
  const at = (opening + STANDARD_FOOT) / 2;
  const [tied, hook] = [-latch * at, latch * at];
  // Seen from above a rope is straight; a second line beside it tells it from an edge.
  const rope = [-1, 1].map((side) =>
    stroke(
      [
        { x: tied, y: side * GATE_POST * 0.12 },
        { x: hook, y: side * GATE_POST * 0.12 },
      ],
      'metal',
    ),
  );
  return {
    footprint: rectangle(length, STANDARD_FOOT),
    marks: [
      ...[-at, at].flatMap(standard).flatMap((each) => [area(each, 'timber'), edge(each)]),
      ...rope,
      { kind: 'disc', at: { x: tied, y: 0 }, radius: GATE_POST * 0.3, ink: 'outline', fill: 'full' },
      { kind: 'disc', at: { x: hook, y: 0 }, radius: GATE_POST * 0.4, ink: 'outline', fill: 'rim' },
    ],
    length,
    width: STANDARD_FOOT,
    height: numberValue(values, 'height'),
    stands: 'standing',
  };
}
