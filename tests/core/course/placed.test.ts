import { describe, expect, test } from 'vitest';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { ringArea } from '../../../src/core/plane/ring.ts';
import { run } from '../ride/hand-laid.ts';

describe('an obstacle on the ground', () => {
  const lying = run('run-1', pose(10, 20, Math.PI / 2), { poles: 2, gap: 3 * FOOT });
  const placed = placedObstacle(lying);

  test('has its pieces at the composition of its pose and theirs, true to size', () => {
    const [first] = placed.pieces;
    expect(first?.key).toBe('run-1/pole-1');
    expect(first?.pose.x).toBeCloseTo(10, 12);
    expect(first?.pose.y).toBeCloseTo(20 - (3 * FOOT + 4 * INCH) / 2, 12);
    expect(ringArea(first?.footprint ?? [])).toBeCloseTo(12 * FOOT * 4 * INCH, 9);
  });

  test('is held by its bounds', () => {
    expect(placed.bounds.maxX - placed.bounds.minX).toBeCloseTo(12 * FOOT, 9);
    expect(placed.bounds.maxY - placed.bounds.minY).toBeCloseTo(3 * FOOT + 8 * INCH, 9);
  });

  test('is the same object for the same obstacle', () => {
    expect(placedObstacle(lying)).toBe(placed);
    expect(placedObstacle({ ...lying })).not.toBe(placed);
  });

  test('keeps the pieces that lie where they lay when only one has moved', () => {
    const pieces = lying.pieces.map((piece, i) => (i === 0 ? { ...piece, pose: { ...piece.pose, y: 0.2 } } : piece));
    const after = placedObstacle({ ...lying, pieces });
    expect(after.pieces[0]).not.toBe(placed.pieces[0]);
    expect(after.pieces[1]).toBe(placed.pieces[1]);
  });

  test('without pieces has the box of its frame’s origin, and leaves out kinds nobody knows', () => {
    const unknown = lying.pieces.map((piece) => ({ ...piece, kind: 'trampoline' }));
    expect(placedObstacle({ ...lying, pieces: unknown })).toMatchObject({
      pieces: [],
      bounds: { minX: 10, minY: 20, maxX: 10, maxY: 20 },
    });
  });
});
