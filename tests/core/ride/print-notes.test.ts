import { describe, expect, test } from 'vitest';
import type { PlacedPiece } from '../../../src/core/course/placed.ts';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import { completeValues } from '../../../src/core/pieces/params.ts';
import { PIECE_KINDS, pieceKind } from '../../../src/core/pieces/pieces.ts';
import { transformRing } from '../../../src/core/plane/ring.ts';
import type { HoofPrint } from '../../../src/core/ride/hoof-print.ts';
import { printNotes } from '../../../src/core/ride/print-notes.ts';

/** A piece with its usual sizes, along the y axis about (`x`, 0). */
function lying(id: string, x: number): PlacedPiece {
  const kind = pieceKind(id) ?? PIECE_KINDS[0];
  if (kind === undefined) throw new Error(`no piece ${id}`);
  const values = completeValues(kind.params);
  const figure = kind.figure(values);
  const pose = { x, y: 0, angle: Math.PI / 2 };
  const footprint = transformRing(figure.footprint, pose);
  const piece = { id: 'pole-1', kind: id, values, pose, fixed: false };
  return { key: 'run-1/pole-1', piece, kind, figure, pose, footprint } as PlacedPiece;
}

const POLE = lying('pole', 0);
const HALF = POLE.figure.width / 2;
const HOOF = STOCK_HORSE.hoof.value;

function print(x: number, more: Partial<HoofPrint> = {}): HoofPrint {
  return {
    leg: 0,
    gait: 'jog',
    lead: null,
    foot: 'left fore',
    point: { x, y: 0.2 },
    heading: 0,
    carried: 0,
    at: 0,
    time: 0,
    stride: 2,
    spread: 0.05,
    ...more,
  } as HoofPrint;
}

const noteOf = (x: number, more: Partial<HoofPrint> = {}) => printNotes([print(x, more)], [POLE], STOCK_HORSE)[0];

/** The normal distribution by Simpson's rule from 0: worked out here and not by the program that is tested. */
function normal(z: number): number {
  const steps = 2000;
  const h = z / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i += 1) {
    sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * Math.exp(-((i * h) ** 2) / 2);
  }
  return 0.5 + (sum * h) / 3 / Math.sqrt(2 * Math.PI);
}

describe('a hoof beside a pole', () => {
  test('is measured from its edge to the face of the pole, on either side', () => {
    for (const side of [1, -1]) {
      const note = noteOf(side * (HALF + HOOF / 2 + 0.03));
      expect(note?.kind).toBe('near');
      expect(note?.clear).toBeCloseTo(0.03, 9);
      expect(note?.key).toBe('run-1/pole-1');
    }
  });

  test('meets the pole from where its edge touches it, and is noted within its own width of it', () => {
    const at = (clear: number) => noteOf(HALF + HOOF / 2 + clear)?.kind;
    expect([at(-0.001), at(0.001), at(HOOF - 0.001), at(HOOF + 0.001)]).toEqual(['meets', 'near', 'near', undefined]);
  });

  test('past the end of the pole is measured to its end', () => {
    const end = POLE.figure.length / 2;
    const note = noteOf(0, { point: { x: 0, y: end + HOOF / 2 + 0.02 } });
    expect(note?.clear).toBeCloseTo(0.02, 9);
  });

  test('nothing but poles is noted', () => {
    expect(printNotes([print(0)], [lying('bridge', 0)], STOCK_HORSE)).toEqual([]);
  });
});

describe('how likely it is', () => {
  test.each([0, 0.04, 0.08, -0.1, 0.15])(
    '%d m before the middle of the pole: the normal distribution over its width',
    (x) => {
      const spread = 0.06;
      const edge = HALF + HOOF / 2;
      const expected = normal((edge - x) / spread) - normal((-edge - x) / spread);
      expect(Math.abs((noteOf(x, { spread })?.likelihood ?? -1) - expected)).toBeLessThan(0.02);
    },
  );

  test('the spread is along the way of the hoof: along the pole it changes nothing', () => {
    const note = noteOf(HALF + HOOF / 2 + 0.01, { carried: Math.PI / 2, spread: 0.1 });
    expect(note?.likelihood).toBe(0);
  });
});
