import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { choiceValue, completeValues, numberValue, type Param, type Values } from '../../../src/core/pieces/params.ts';
import type { PieceKind } from '../../../src/core/pieces/piece.ts';
import { PIECE_KINDS, pieceKind } from '../../../src/core/pieces/pieces.ts';
import { ringArea, ringBounds, ringContains } from '../../../src/core/plane/ring.ts';

/** Any value inside a parameter's bounds. */
function inside(param: Param): fc.Arbitrary<number | string> {
  if (param.kind === 'choice') return fc.constantFrom(...Object.keys(param.options));
  return param.kind === 'count'
    ? fc.integer({ min: param.least, max: param.most })
    : fc.double({ min: param.least, max: param.most, noNaN: true });
}

function anyValues(kind: PieceKind): fc.Arbitrary<Values> {
  return fc.record(Object.fromEntries(Object.entries(kind.params).map(([key, param]) => [key, inside(param)])));
}

describe.each(PIECE_KINDS.map((kind) => [kind.id, kind] as const))('a %s', (id, kind) => {
  test('is found by its id', () => {
    expect(pieceKind(id)).toBe(kind);
  });

  test('has usual values inside their bounds', () => {
    for (const [key, param] of Object.entries(kind.params)) {
      if (param.kind === 'choice') expect(Object.keys(param.options), key).toContain(param.usual);
      else {
        expect(param.usual, key).toBeGreaterThanOrEqual(param.least);
        expect(param.usual, key).toBeLessThanOrEqual(param.most);
      }
    }
  });

  test('covers a counter-clockwise outline about its middle, as large as it says, whatever its values', () => {
    fc.assert(
      fc.property(anyValues(kind), (values) => {
        const { footprint, length, width, height } = kind.figure(values);
        expect(ringArea(footprint)).toBeGreaterThan(0);
        const { minX, minY, maxX, maxY } = ringBounds(footprint);
        expect(maxX - minX).toBeCloseTo(length, 9);
        expect(maxY - minY).toBeCloseTo(width, 9);
        expect(maxX + minX).toBeCloseTo(0, 9);
        expect(maxY + minY).toBeCloseTo(0, 9);
        expect(height).toBeGreaterThan(0);
      }),
      { numRuns: 40 },
    );
  });

  test('paints nothing solid outside its footprint but leaves, cups and the swing of a gate', () => {
    const { footprint, marks } = kind.figure(completeValues(kind.params));
    const solid = marks.flatMap((mark) => (mark.kind === 'area' ? mark.ring : []));
    expect(marks.length).toBeGreaterThan(2);
    for (const at of solid) expect(ringContains(footprint, at) || id === 'plant', JSON.stringify(at)).toBe(true);
  });
});

test('ids of piece kinds are unique', () => {
  expect(new Set(PIECE_KINDS.map((kind) => kind.id)).size).toBe(PIECE_KINDS.length);
  expect(pieceKind('sofa')).toBeUndefined();
});

test('a value of the wrong kind is a mistake of the program and names itself', () => {
  expect(() => numberValue({ length: 'long' }, 'length')).toThrow('"length" must be a number, got "long"');
  expect(() => choiceValue({}, 'shape')).toThrow('"shape" must be an option\'s id');
});
