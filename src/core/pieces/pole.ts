import { feet, inches } from '../measure/quantity.ts';
import type { Mark } from '../plane/mark.ts';
import { rectangle } from '../plane/ring.ts';
import { area, edge, rectangleBetween, stroke } from './outline.ts';
import { choiceValue, numberValue } from './params.ts';
import type { Figure, PieceKind } from './piece.ts';

/**
 * The bands of paint along a pole of the given length: from and to, metres from its −x end. The same seen from both
 * ends.
 */
export function stripes(length: number, bands: string): readonly (readonly [number, number])[] {
  const half = length / 2;
  if (bands === 'plain') return [];
  if (bands === 'ends') {
    const end = Math.min(feet(2), length / 4);
    return [
      [0, end],
      [length - end, length],
    ];
  }
  const found: (readonly [number, number])[] = [];
  for (let from = 0; from < half - 1e-9; from += feet(4)) {
    const to = from + feet(2);
    // The band that reaches the middle joins its mirror image.
    if (to >= half - 1e-9) found.push([from, length - from]);
    else found.push([from, to], [length - to, length - from]);
  }
  return found.sort((a, b) => a[0] - b[0]);
}

/** The cup that a raised end rests in, seen from above: a bracket about the end. `end` is −1 or 1. */
function cup(length: number, thickness: number, end: 1 | -1): Mark {
  const halfWidth = thickness * 0.9;
  const out = end * (length / 2 + thickness * 0.35);
  const back = end * (length / 2 - thickness * 0.9);
  return stroke(
    [
      { x: back, y: -halfWidth },
      { x: out, y: -halfWidth },
      { x: out, y: halfWidth },
      { x: back, y: halfWidth },
    ],
    'metal',
  );
}

/** A ground pole; its length runs along x. */
export const polePiece: PieceKind = {
  id: 'pole',
  title: 'Pole',
  extent: 'long',
  limits: ['pole.length'],
  isPlain: true,
  handling: {
    carriers: 'by-length',
    alike: 'half-turn',
    rigging: ['raisedStart', 'raisedEnd'],
    isSpared: true,
    // In its cups it does not roll.
    rolls: (values) =>
      choiceValue(values, 'shape') === 'round' &&
      numberValue(values, 'raisedStart') === 0 &&
      numberValue(values, 'raisedEnd') === 0,
    fittings(values) {
      const half = numberValue(values, 'length') / 2;
      const ends = [
        { end: 'start', at: { x: -half, y: 0 }, height: numberValue(values, 'raisedStart') },
        { end: 'end', at: { x: half, y: 0 }, height: numberValue(values, 'raisedEnd') },
      ] as const;
      return ends.filter(({ height }) => height > 0);
    },
  },
  params: {
    length: { kind: 'length', label: 'Length', usual: feet(12), least: feet(2), most: feet(20) },
    thickness: {
      kind: 'length',
      label: 'Thickness',
      says: 'Its width on the ground.',
      usual: inches(4),
      least: inches(2),
      most: inches(8),
    },
    shape: { kind: 'choice', label: 'Shape', usual: 'round', options: { round: 'Round', square: 'Square' } },
    bands: {
      kind: 'choice',
      label: 'Paint',
      usual: 'banded-2ft',
      options: { plain: 'Plain', 'banded-2ft': 'A band every 2 ft', ends: 'Painted ends' },
    },
    raisedStart: { kind: 'length', label: 'Raised at its start', usual: 0, least: 0, most: inches(24) },
    raisedEnd: { kind: 'length', label: 'Raised at its end', usual: 0, least: 0, most: inches(24) },
  },
  figure(values): Figure {
    const length = numberValue(values, 'length');
    const thickness = numberValue(values, 'thickness');
    const footprint = rectangle(length, thickness);
    const y = thickness / 2;
    const bands = stripes(length, choiceValue(values, 'bands')).map(([from, to]) =>
      area(rectangleBetween(from - length / 2, -y, to - length / 2, y), 'stripe'),
    );
    // A round pole shows its shine, one off-centre line; a square one its two edges.
    const lines = (choiceValue(values, 'shape') === 'round' ? [0.45] : [-0.5, 0.5]).map((at) =>
      stroke(
        [
          { x: -length / 2, y: y * at },
          { x: length / 2, y: y * at },
        ],
        'faint',
      ),
    );
    const raisedStart = numberValue(values, 'raisedStart');
    const raisedEnd = numberValue(values, 'raisedEnd');
    const cups = [
      ...(raisedStart > 0 ? [cup(length, thickness, -1)] : []),
      ...(raisedEnd > 0 ? [cup(length, thickness, 1)] : []),
    ];
    return {
      footprint,
      marks: [area(footprint, 'timber'), ...bands, ...lines, edge(footprint), ...cups],
      length,
      width: thickness,
      height: Math.max(raisedStart, raisedEnd) + thickness,
      stands: 'ground',
    };
  },
};
