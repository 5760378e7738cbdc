/** Expected words by hand, from ways drawn by hand; kinds' own ways are tested against their line in instructions. */
import { describe, expect, test } from 'vitest';
import type { Pose } from '../../src/core/plane/pose.ts';
import { type LetteredMarker, markerWords } from '../../src/sheets/marker-way.ts';

function at(letter: string, x: number, y: number): LetteredMarker {
  return { letter, at: { x, y } };
}

/** Poses along points, the horse facing as it goes, or against it. */
function way(points: readonly (readonly [number, number])[], moves: 'ridden' | 'backed'): Pose[] {
  return points.map(([x, y], i) => {
    const [from, to] = [points[Math.max(0, i - 1)], points[Math.min(points.length - 1, i + 1)]];
    const ahead = Math.atan2((to?.[1] ?? 0) - (from?.[1] ?? 0), (to?.[0] ?? 0) - (from?.[0] ?? 0));
    return { x, y, angle: moves === 'ridden' ? ahead : ahead + Math.PI };
  });
}

const ROW = [at('A', 0, 0), at('B', 3, 0), at('C', 6, 0), at('D', 9, 0), at('E', 12, 0)];
const TRIANGLE = [at('A', -1.5, 0), at('B', 1.5, 0), at('C', 0, 2.6)];

describe('a way among markers', () => {
  test('that passes a row on alternate sides is a serpentine, from the hand of the first', () => {
    const points = ROW.map((marker, i) => [marker.at.x, i % 2 === 0 ? 0.8 : -0.8] as const);
    const words = 'through A to E in a serpentine, starting with A on your';
    expect(markerWords(way(points, 'ridden'), ROW)).toBe(`${words} right`);
    expect(markerWords(way(points, 'backed'), ROW)).toBe(`${words} left`);
    expect(markerWords(way(points.toReversed(), 'ridden'), ROW)).toBe(
      'through E to A in a serpentine, starting with E on your left',
    );
    const three = ROW.slice(0, 3);
    expect(markerWords(way(points.slice(0, 3), 'ridden'), three)).toMatch(/^through A, B and C in a serpentine/);
  });

  test('that goes in, around the far one and out again names each gate in order', () => {
    const points = [
      [0, -1.5],
      [0, 0.7],
      [-1.3, 1.6],
      [-1.2, 3],
      [0, 4],
      [1.2, 3],
      [1.3, 1.6],
      [0, 0.7],
      [0, -1.5],
    ] as const;
    const words = 'between A and B, out between A and C, around C, in between B and C, and out between A and B';
    expect(markerWords(way(points, 'backed'), TRIANGLE)).toBe(words);
    expect(markerWords(way(points.toReversed(), 'backed'), TRIANGLE)).toBe(
      'between A and B, out between B and C, around C, in between A and C, and out between A and B',
    );
  });

  test('that goes straight through is said so, and past them with the hand of each', () => {
    const through = [
      [-3, 1],
      [0, 1],
      [3, 1],
    ] as const;
    expect(markerWords(way(through, 'ridden'), TRIANGLE)).toBe('between A and C, and out between B and C');
    const past = [
      [-3, -1],
      [-1.5, -1],
      [1.5, -1],
      [3, -1],
    ] as const;
    expect(markerWords(way(past, 'ridden'), TRIANGLE.slice(0, 2))).toBe('past A and B on your left');
  });

  test('that takes a row by turns, in any order of its letters, names each of them', () => {
    const shuffled = [at('A', 0, 0), at('C', 3, 0), at('B', 6, 0), at('D', 9, 0)];
    const points = shuffled.map((marker, i) => [marker.at.x, i % 2 === 0 ? 0.8 : -0.8] as const);
    expect(markerWords(way(points, 'ridden'), shuffled)).toBe(
      'through A, C, B and D in a serpentine, starting with A on your right',
    );
  });

  test('that goes straight between two is no serpentine', () => {
    const across = [
      [1.5, -2],
      [1.5, 2],
    ] as const;
    expect(markerWords(way(across, 'ridden'), ROW.slice(0, 2))).toBe('between A and B');
    // Of a longer row too: the gate is named, and the others are not.
    expect(markerWords(way(across, 'backed'), ROW)).toBe('between A and B');
  });

  test('between four in a square a diagonal is no gate', () => {
    const square = [at('A', 0, 0), at('B', 4, 0), at('C', 4, 4), at('D', 0, 4)];
    const points = [
      [2, -2],
      [2, 1],
      [3, 2],
      [6, 2],
    ] as const;
    expect(markerWords(way(points, 'ridden'), square)).toBe('between A and B, and out between B and C');
  });
});
