import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildKind, buildObstacle, mirroredBuilt } from '../../../src/core/obstacles/build.ts';
import type { Built, Infeasible, ObstacleKind } from '../../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS, obstacleKind } from '../../../src/core/obstacles/obstacles.ts';
import { completeValues, type Values } from '../../../src/core/pieces/params.ts';
import { overlapArea } from '../../../src/core/plane/clip.ts';
import { ORIGIN, pose } from '../../../src/core/plane/pose.ts';
import { anyValues, equations, footprintOf, rank } from './samples.ts';

/** Clipping snaps corners to 1/1024 in, which over 16 ft of a touching pole is 1.2e-4 m². */
const TOUCHING_AREA = 2e-4;

/** How many pairs of pieces lie on one another. */
function overlaps({ pieces }: Built): string[] {
  const rings = pieces.map((piece) => ({ id: piece.id, ring: footprintOf(piece) }));
  return rings.flatMap((a, i) =>
    rings.slice(i + 1).flatMap((b) => (overlapArea(a.ring, b.ring) > TOUCHING_AREA ? [`${a.id} on ${b.id}`] : [])),
  );
}

/** What is laid, or what is laid from the nearest values that the refusal offers. */
function laid(kind: ObstacleKind, values: Values): Built {
  const result = buildKind(kind, values);
  if (result.kind === 'built') return result;
  expect(result.nearest, result.why).toBeDefined();
  const again = buildKind(kind, { ...values, ...result.nearest });
  expect(again.kind, `${result.why} ${(again as Infeasible).why}`).toBe('built');
  return again as Built;
}

function expectSound(kind: ObstacleKind, result: Built): void {
  const ids = new Set(result.pieces.map((piece) => piece.id));
  expect(ids.size).toBe(result.pieces.length);
  expect(overlaps(result)).toEqual([]);
  for (const fact of Object.values(result.facts)) expect(Number.isFinite(fact)).toBe(true);
  expect(new Set(result.passages.map((passage) => passage.id)).size).toBe(result.passages.length);
  for (const passage of result.passages) {
    const [first] = passage.stations;
    expect(first?.kind === 'cross' || (first?.kind === 'reach' && first.move === 'ride'), passage.id).toBe(true);
    expect(passage.title).not.toMatch(/\b(walk|jog|lope)\b/);
    expect(passage.gaits.length).toBeGreaterThan(0);
    expect(new Set(passage.gaits).size).toBe(passage.gaits.length);
    for (const station of passage.stations) {
      if (station.kind === 'turn') continue;
      expect(ids, `${kind.id} ${passage.id}`).toContain(station.piece);
      if (station.kind !== 'cross') continue;
      expect(station.fraction).toBeGreaterThanOrEqual(0);
      expect(station.fraction).toBeLessThanOrEqual(1);
    }
  }
}

/** Every constraint is met by the pieces as laid, and no equation says what the others say. */
function expectWellHeld(result: Pick<Built, 'pieces' | 'constraints'>): void {
  expect(new Set(result.constraints.map((constraint) => constraint.id)).size).toBe(result.constraints.length);
  const rows = result.constraints.flatMap((constraint) => {
    const found = equations(result, constraint);
    for (const { value } of found) expect(Math.abs(value), `${constraint.id} ${constraint.kind}`).toBeLessThan(1e-9);
    return found.map(({ row }) => row);
  });
  expect(rank(rows)).toBe(rows.length);
}

describe.each(OBSTACLE_KINDS.map((kind) => [kind.id, kind] as const))('a %s', (id, kind) => {
  test('is found by its id and builds at its usual values', () => {
    expect(obstacleKind(id)).toBe(kind);
    expect(buildKind(kind, {}).kind).toBe('built');
  });

  test('builds at every value inside its bounds, or offers values that do', () => {
    fc.assert(
      fc.property(anyValues(kind), (values) => expectSound(kind, laid(kind, values))),
      { numRuns: 100 },
    );
  });

  test('is held together by constraints that it meets and that do not repeat each other, also in the mirror', () => {
    fc.assert(
      fc.property(anyValues(kind), (values) => {
        const result = laid(kind, values);
        expectWellHeld(result);
        expectWellHeld(mirroredBuilt(result));
      }),
      { numRuns: 40 },
    );
  });

  test('refuses each value outside its bounds by name and offers values that build', () => {
    for (const [key, param] of Object.entries(kind.params)) {
      const wrong = param.kind === 'choice' ? ['nonsense', 3] : [param.least - 1, param.most + 1, Number.NaN, 'wide'];
      for (const value of wrong) {
        const result = buildKind(kind, { [key]: value });
        expect(result.kind).toBe('infeasible');
        if (result.kind === 'infeasible') expect(result.why).toContain(`${param.label}: `);
        expectSound(kind, laid(kind, { [key]: value }));
      }
    }
  });

  test('mirrored twice is itself, and survives being written down', () => {
    const result = laid(kind, {});
    expect(mirroredBuilt(mirroredBuilt(result))).toEqual(result);
    const obstacle = buildObstacle('it-1', id, {}, pose(3, 4, 1), -1);
    expect(JSON.parse(JSON.stringify(obstacle))).toEqual(obstacle);
  });

  test('stands about its origin', () => {
    const points = laid(kind, {}).pieces.flatMap(footprintOf);
    const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
    // A fan's middle pole is at the origin, its wings reach further back than out.
    const slack = id === 'fan' ? 0.6 : 0.16;
    expect(Math.abs(middle(points.map(({ x }) => x)))).toBeLessThan(slack);
    expect(Math.abs(middle(points.map(({ y }) => y)))).toBeLessThan(slack);
  });
});

describe('an obstacle made', () => {
  test('keeps what it was made from, complete', () => {
    const obstacle = buildObstacle('fan-1', 'fan', { gap: 1.9 }, pose(5, 6), -1);
    const kind = obstacleKind('fan');
    expect(obstacle).toMatchObject({ id: 'fan-1', kind: 'fan', pose: { x: 5, y: 6, angle: 0 }, side: -1 });
    expect(obstacle).toHaveProperty('values', completeValues(kind?.params ?? {}, { gap: 1.9 }));
  });

  test('of an unknown kind is refused by name', () => {
    const why = 'There is no obstacle of the kind "trampoline".';
    expect(buildObstacle('t-1', 'trampoline', {}, ORIGIN)).toEqual({ kind: 'infeasible', why, facts: {} });
  });

  test('in the mirror changes hands: pieces, ways, turns and words', () => {
    const left = buildObstacle('box-1', 'box', {}, ORIGIN);
    const right = buildObstacle('box-1', 'box', {}, ORIGIN, -1);
    if ('why' in left || 'why' in right) throw new Error('a box is always right');
    const turn = (obstacle: typeof left) => obstacle.passages.find(({ id }) => id === 'turn-left');
    expect(turn(left)?.title).toContain('full turn left');
    expect(turn(right)?.title).toContain('full turn right');
    expect(turn(right)?.stations).toContainEqual({ kind: 'turn', by: -2 * Math.PI });
  });
});
