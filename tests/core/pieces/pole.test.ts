import { describe, expect, test } from 'vitest';
import { completeValues } from '../../../src/core/pieces/params.ts';
import { polePiece, stripes } from '../../../src/core/pieces/pole.ts';

const FT = 0.3048;
const inFeet = (bands: readonly (readonly [number, number])[]) =>
  bands.map(([from, to]) => [Number((from / FT).toFixed(6)), Number((to / FT).toFixed(6))]);

describe('the bands of a pole', () => {
  test('on 12 ft: 2 ft of paint at each end and 4 ft in the middle', () => {
    expect(inFeet(stripes(12 * FT, 'banded-2ft'))).toEqual([
      [0, 2],
      [4, 8],
      [10, 12],
    ]);
  });

  test('on 10 ft: every second 2 ft', () => {
    expect(inFeet(stripes(10 * FT, 'banded-2ft'))).toEqual([
      [0, 2],
      [4, 6],
      [8, 10],
    ]);
  });

  test('on 8 ft: the ends, and 4 ft of wood between', () => {
    expect(inFeet(stripes(8 * FT, 'banded-2ft'))).toEqual([
      [0, 2],
      [6, 8],
    ]);
  });

  test('look the same from both ends at every length', () => {
    for (let length = 0.61; length < 6; length += 0.13) {
      const bands = stripes(length, 'banded-2ft');
      const seenBack = bands.map(([from, to]) => [length - to, length - from]).reverse();
      bands.forEach(([from, to], i) => {
        expect(seenBack[i]?.[0]).toBeCloseTo(from, 9);
        expect(seenBack[i]?.[1]).toBeCloseTo(to, 9);
        if (i > 0) expect(from).toBeGreaterThan(bands[i - 1]?.[1] ?? 0);
      });
    }
  });

  test('are none on a plain pole', () => {
    expect(stripes(3, 'plain')).toEqual([]);
  });
});

describe('a raised pole', () => {
  const raised = polePiece.figure(completeValues(polePiece.params, { raisedEnd: 0.2, thickness: 0.1 }));

  test('is as high as its higher end and itself', () => {
    expect(raised.height).toBeCloseTo(0.3, 12);
  });

  test('shows a cup at the raised end only', () => {
    const cups = raised.marks.filter((mark) => mark.ink === 'metal');
    expect(cups).toHaveLength(1);
    expect(cups.every((mark) => mark.kind === 'line' && mark.points.every(({ x }) => x > 0))).toBe(true);
  });
});

test('a square pole looks different from a round one', () => {
  const square = polePiece.figure(completeValues(polePiece.params, { shape: 'square' }));
  expect(square.marks).not.toEqual(polePiece.figure(completeValues(polePiece.params)).marks);
});
