import { describe, expect, test } from 'vitest';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { compose, normalizeAngle, type Pose, pose } from '../../../src/core/plane/pose.ts';
import { tightestRadius } from '../../../src/core/ride/connection.ts';
import { type PassageLine, passageLine } from '../../../src/core/ride/passage-line.ts';
import { fan, obstacle, pole, run } from './hand-laid.ts';

function lineOver(of: Obstacle, gait: 'walk' | 'jog' | 'lope' = 'jog'): PassageLine {
  const [passage] = of.passages;
  const line = passage && passageLine(placedObstacle(of), { passage, gait, horse: STOCK_HORSE });
  if (line === undefined) throw new Error('the passage has no line');
  return line;
}

/** The obstacle with one pole pushed by a pose in its own frame. */
function pushed(of: Obstacle, id: string, by: Pose): Obstacle {
  return {
    ...of,
    pieces: of.pieces.map((piece) => (piece.id === id ? { ...piece, pose: compose(piece.pose, by) } : piece)),
  };
}

describe('the line over a run', () => {
  const line = lineOver(run('run', pose(10, 10, 0.5), { poles: 4, gap: 3 * FOOT }));

  test('is one straight, square over each pole at its middle', () => {
    expect(line.elements).toHaveLength(1);
    expect(line.elements[0]?.path).toHaveLength(1);
    expect(line.elements[0]?.path[0]?.curvature).toBe(0);
    expect(line.crossings.map(({ skew }) => Math.abs(skew) < 1e-12)).toEqual([true, true, true, true]);
    expect(line.length).toBeCloseTo(3 * (3 * FOOT + 4 * INCH), 9);
  });

  test('has gaps that measure the same by tape and along the line', () => {
    expect(line.gaps).toHaveLength(3);
    for (const gap of line.gaps) {
      expect(gap.taped).toBeCloseTo(3 * FOOT, 9);
      expect(gap.ridden).toBeCloseTo(3 * FOOT, 9);
      expect(distance(...gap.ends)).toBeCloseTo(3 * FOOT, 9);
    }
  });

  test('at 6 ft takes two jogging steps, at a quarter and three quarters of the gap', () => {
    const [gap] = lineOver(run('run', pose(0, 0, 0), { poles: 2, gap: 6 * FOOT })).gaps;
    expect(gap?.landings).toMatchObject({ count: 2, fits: true });
    const places = gap?.landings.places.map(({ at }) => (at - (gap?.from ?? 0)) / (6 * FOOT));
    expect(places?.[0]).toBeCloseTo(0.25, 9);
    expect(places?.[1]).toBeCloseTo(0.75, 9);
  });
});

describe('the line over a fan', () => {
  const [angle, radius, thickness] = [0.55, 3.3, 4 * INCH];
  const line = lineOver(fan('fan', pose(20, 10, 2), { poles: 4, angle, radius, thickness }));

  test('is the arc about the meeting point', () => {
    expect(line.elements[0]?.path).toHaveLength(1);
    expect(line.elements[0]?.path[0]?.curvature).toBeCloseTo(1 / radius, 9);
    expect(line.length).toBeCloseTo(3 * angle * radius, 9);
    for (const { pose: at, skew } of line.crossings) {
      expect(distance(at, { x: 20, y: 10 })).toBeCloseTo(radius, 9);
      expect(skew).toBeCloseTo(0, 12);
    }
  });

  test('has the gaps of the closed form, taped and ridden', () => {
    for (const gap of line.gaps) {
      expect(gap.taped).toBeCloseTo(2 * radius * Math.sin(angle / 2) - thickness / Math.cos(angle / 2), 9);
      expect(gap.ridden).toBeCloseTo(radius * (angle - 2 * Math.asin(thickness / 2 / radius)), 9);
    }
  });

  test('too tight for the gait is still that arc: the checks say so', () => {
    const tight = lineOver(fan('fan', pose(20, 10, 2), { radius: 2, fraction: 0.5, angle: 0.9 }), 'lope');
    expect(tightestRadius(tight.elements[0]?.path ?? [])).toBeCloseTo(2, 9);
  });

  test.each(['walk', 'jog', 'lope'] as const)('with a pole a little out of true stays calm at a %s', (gait) => {
    for (const by of [pose(0.05, 0.04, 0.03), pose(-0.1, 0, -0.06), pose(0, -0.08, 0.05)]) {
      for (const id of ['pole-1', 'pole-2', 'pole-4']) {
        const off = lineOver(pushed(fan('fan', pose(20, 10, 2), { poles: 4, angle, radius }), id, by), gait);
        expect(off.length).toBeLessThan(1.08 * line.length);
        for (const { skew } of off.crossings) expect(Math.abs(skew)).toBeLessThanOrEqual((20.001 * Math.PI) / 180);
      }
    }
  });
});

test('a run with one pole pushed half a metre along itself is crossed off square sooner than in a circle', () => {
  const straight = lineOver(run('run', pose(0, 0, 0), { gap: 3 * FOOT }));
  // The station is a fraction along the pole, so the crossing goes with the pole.
  const off = lineOver(pushed(run('run', pose(0, 0, 0), { gap: 3 * FOOT }), 'pole-2', pose(0.5, 0, 0)));
  expect(off.length).toBeLessThan(1.4 * straight.length);
  expect(Math.max(...off.crossings.map(({ skew }) => Math.abs(skew)))).toBeGreaterThan(0.05);
});

describe('a passage that is more than riding', () => {
  const lane = [pole('left', pose(0, 0.5, 0)), pole('right', pose(0, -0.5, 0))];

  test('backs along its path, facing away from where it goes', () => {
    const line = lineOver(
      obstacle('lane', pose(0, 0, 0), lane, [
        { kind: 'reach', piece: 'right', pose: pose(2.5, 0.5, 0), move: 'ride' },
        { kind: 'reach', piece: 'right', pose: pose(-2.5, 0.5, 0), move: 'back' },
      ]),
    );
    expect(line.elements.map(({ move }) => move)).toEqual(['back']);
    const [back] = line.elements;
    expect(back?.facing).toBe(Math.PI);
    expect(back?.length).toBeCloseTo(5, 9);
    // 5 m in steps of 0.35 m of 0.8 s each.
    expect(back?.seconds).toBeCloseTo((5 / 0.35) * 0.8, 9);
    expect(normalizeAngle(line.end.angle)).toBeCloseTo(0, 9);
  });

  test('side passes straight with the heading kept, and turns first where the heading differs', () => {
    const line = lineOver(
      obstacle('pass', pose(0, 0, 0), lane, [
        { kind: 'reach', piece: 'left', pose: pose(-1.5, 0, Math.PI / 2), move: 'ride' },
        { kind: 'reach', piece: 'left', pose: pose(1.5, 0, Math.PI / 2), move: 'side-pass' },
        { kind: 'reach', piece: 'left', pose: pose(1.5, -2, 0), move: 'side-pass' },
      ]),
    );
    expect(line.elements.map(({ move }) => move)).toEqual(['side-pass', 'turn', 'side-pass']);
    const [pass, turn, second] = line.elements;
    expect(pass?.length).toBeCloseTo(3, 12);
    expect(normalizeAngle((pass?.path[0]?.start.angle ?? 9) + (pass?.facing ?? 9))).toBeCloseTo(Math.PI / 2, 12);
    expect(turn?.turn).toBeCloseTo(-Math.PI / 2, 12);
    expect(turn?.length).toBe(0);
    // A quarter of the 12 s for a full turn.
    expect(turn?.seconds).toBeCloseTo(3, 12);
    expect(normalizeAngle((second?.path[0]?.start.angle ?? 9) + (second?.facing ?? 9))).toBeCloseTo(0, 12);
  });

  test('turns on the spot and rides out the way it then faces', () => {
    const box = [pole('near', pose(0, -1, 0)), pole('far', pose(0, 1, 0))];
    const line = lineOver(
      obstacle('box', pose(0, 0, 0), box, [
        { kind: 'cross', piece: 'near', fraction: 0.5, way: 1 },
        { kind: 'reach', piece: 'near', pose: pose(0, 1, Math.PI / 2), move: 'ride' },
        { kind: 'turn', by: 2 * Math.PI },
        { kind: 'cross', piece: 'far', fraction: 0.5, way: 1 },
      ]),
    );
    expect(line.elements.map(({ move }) => move)).toEqual(['ride', 'turn', 'ride']);
    expect(line.length).toBeCloseTo(2, 9);
    expect(line.gaps).toEqual([]);
    expect(line.leavesOver).toBe(true);
  });

  test('works the gate straight through it, turns back round the hand on it, in the time of a gate', () => {
    const through = (hand: 1 | -1) =>
      lineOver(
        obstacle('gate', pose(0, 0, 0), lane, [
          { kind: 'reach', piece: 'left', pose: pose(0, -hand, 0), move: 'ride' },
          { kind: 'reach', piece: 'left', pose: pose(0, hand, Math.PI), move: 'work' },
        ]),
      ).elements;
    for (const hand of [1, -1] as const) {
      const [work, turn] = through(hand);
      expect(work).toMatchObject({ move: 'work', seconds: 25 });
      expect(work?.length).toBeCloseTo(2, 12);
      expect(work?.facing).toBeCloseTo((-hand * Math.PI) / 2, 12);
      expect(turn).toMatchObject({ move: 'turn', seconds: 0 });
      expect(turn?.turn).toBeCloseTo(hand * Math.PI, 12);
    }
  });

  test('takes the time of work that goes nowhere', () => {
    const at = pose(0, 1, 0);
    const { elements, length } = lineOver(
      obstacle('box', pose(0, 0, 0), lane, [
        { kind: 'reach', piece: 'left', pose: at, move: 'ride' },
        { kind: 'reach', piece: 'left', pose: at, move: 'work' },
      ]),
    );
    expect(elements.map(({ move, seconds }) => [move, seconds])).toEqual([['work', 25]]);
    expect(length).toBe(0);
  });

  test('says which piece it misses and goes on with the rest', () => {
    const line = lineOver(
      obstacle('run', pose(0, 0, 0), lane, [
        { kind: 'cross', piece: 'right', fraction: 0.5, way: 1 },
        { kind: 'cross', piece: 'middle', fraction: 0.5, way: 1 },
        { kind: 'cross', piece: 'left', fraction: 0.5, way: 1 },
      ]),
    );
    expect(line.breaks).toHaveLength(1);
    expect(line.breaks[0]?.why).toContain('"middle"');
    expect(line.crossings.map(({ key }) => key)).toEqual(['run/right', 'run/left']);
  });
});
