/** Arbitrary values inside and around the bounds of a kind, and what is laid from them. */
import fc from 'fast-check';
import type { Constraint, GrippedPose } from '../../../src/core/constraints/constraint.ts';
import { constraintKind } from '../../../src/core/constraints/constraints.ts';
import type { Built, ObstacleKind } from '../../../src/core/obstacles/obstacle.ts';
import type { Param, Values } from '../../../src/core/pieces/params.ts';
import type { Figure, Piece } from '../../../src/core/pieces/piece.ts';
import { pieceKind } from '../../../src/core/pieces/pieces.ts';
import { toWorld } from '../../../src/core/plane/pose.ts';
import type { Ring } from '../../../src/core/plane/ring.ts';

function inside(param: Param): fc.Arbitrary<number | string> {
  if (param.kind === 'choice') return fc.constantFrom(...Object.keys(param.options));
  if (param.kind === 'count') return fc.integer({ min: param.least, max: param.most });
  return fc.oneof(
    fc.constantFrom(param.least, param.usual, param.most),
    fc.double({ min: param.least, max: param.most, noNaN: true }),
  );
}

export function anyValues(kind: ObstacleKind): fc.Arbitrary<Values> {
  return fc.record(Object.fromEntries(Object.entries(kind.params).map(([key, param]) => [key, inside(param)])));
}

export function figureOf(piece: Piece): Figure {
  const kind = pieceKind(piece.kind);
  if (kind === undefined) throw new Error(`no piece kind ${piece.kind}`);
  return kind.figure(piece.values);
}

export function footprintOf(piece: Piece): Ring {
  return figureOf(piece).footprint.map((corner) => toWorld(piece.pose, corner));
}

/** The equations of one constraint on the pieces as laid, with a row of derivatives over all poses each. */
export function equations(built: Pick<Built, 'pieces'>, constraint: Constraint): { value: number; row: number[] }[] {
  const kind = constraintKind(constraint.kind);
  if (kind === undefined) throw new Error(`no constraint kind ${constraint.kind}`);
  const gripped = constraint.grips.map((grip) => {
    const index = 'piece' in grip ? built.pieces.findIndex((piece) => piece.id === grip.piece) : -1;
    const piece = built.pieces[index];
    if (piece === undefined || !('piece' in grip)) throw new Error(`${constraint.id} grips nothing`);
    const { length, width } = figureOf(piece);
    const held: GrippedPose = { pose: piece.pose, length, width, at: grip.at ?? 0.5 };
    return { index, held };
  });
  const residuals = kind.residuals(
    gripped.map(({ held }) => held),
    constraint.hold ?? 0,
    constraint.side ?? 1,
  );
  return residuals.map(({ value, gradient }) => {
    const row = new Array<number>(3 * built.pieces.length).fill(0);
    gripped.forEach(({ index }, i) => {
      (gradient[i] ?? [0, 0, 0]).forEach((slope, k) => {
        row[3 * index + k] = (row[3 * index + k] ?? 0) + slope;
      });
    });
    return { value, row };
  });
}

/** The number of independent rows, by elimination with full pivoting. */
export function rank(rows: readonly (readonly number[])[]): number {
  const left = rows.map((row) => [...row]);
  let found = 0;
  for (;;) {
    let best = { i: -1, j: -1, size: 1e-7 };
    left.forEach((row, i) => {
      if (i < found) return;
      row.forEach((value, j) => {
        if (Math.abs(value) > best.size) best = { i, j, size: Math.abs(value) };
      });
    });
    const pivot = left[best.i];
    if (pivot === undefined) return found;
    [left[best.i], left[found]] = [left[found] ?? pivot, pivot];
    for (let i = found + 1; i < left.length; i++) {
      const row = left[i] ?? [];
      const factor = (row[best.j] ?? 0) / (pivot[best.j] ?? 1);
      left[i] = row.map((value, j) => value - factor * (pivot[j] ?? 0));
    }
    found += 1;
  }
}
