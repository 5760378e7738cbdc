/** Where a horse stands at a gate, and which ends of raised poles are up: told apart from the code that builds them. */
import { describe, expect, test } from 'vitest';
import { buildKind } from '../../../src/core/obstacles/build.ts';
import type { Built } from '../../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import type { Values } from '../../../src/core/pieces/params.ts';
import { pieceKind } from '../../../src/core/pieces/pieces.ts';
import type { Point } from '../../../src/core/plane/point.ts';
import { ringBounds } from '../../../src/core/plane/ring.ts';

function built(id: string, values: Values): Built {
  const kind = OBSTACLE_KINDS.find((each) => each.id === id);
  const result = kind === undefined ? undefined : buildKind(kind, values);
  if (result?.kind !== 'built') throw new Error(`${id} was not built`);
  return result;
}

const OPENING = 2;
const GATES = (['end', 'start'] as const).flatMap((latch) =>
  (['left', 'right'] as const).flatMap((hand) => (['push', 'pull'] as const).map((how) => ({ latch, hand, how }))),
);

describe.each(GATES)('a gate with its latch at the $latch, worked by the $hand hand, $how', ({ latch, hand, how }) => {
  const passage = built('gate', { latch, opening: OPENING }).passages.find(({ id }) => id === `${hand}-${how}`);
  const poses = (passage?.stations ?? []).flatMap((station) => (station.kind === 'reach' ? [station.pose] : []));
  const [beside, last] = [poses[0], poses.at(-1)];
  const through = poses.at(-2);
  if (beside === undefined || last === undefined || through === undefined) throw new Error('no stations');
  const post: Point = { x: (latch === 'end' ? 1 : -1) * (OPENING / 2), y: 0 };
  /** Positive when a place is on the left of a horse at the pose. */
  const onLeft = (pose: { x: number; y: number; angle: number }, { x, y }: Point): number =>
    Math.cos(pose.angle) * (y - pose.y) - Math.sin(pose.angle) * (x - pose.x);
  const ahead = (pose: { x: number; y: number; angle: number }, { x, y }: Point): number =>
    Math.cos(pose.angle) * (x - pose.x) + Math.sin(pose.angle) * (y - pose.y);

  test('the latch is beside the rider, a little ahead, on the side of the hand', () => {
    expect(Math.sign(onLeft(beside, post))).toBe(hand === 'left' ? 1 : -1);
    expect(ahead(beside, post)).toBeGreaterThan(0);
    expect(ahead(beside, post)).toBeLessThan(0.5);
  });

  test('the horse ends on the other side of the gate, turned about, the latch on the same hand', () => {
    expect(Math.sign(through.y)).toBe(-Math.sign(beside.y));
    expect(Math.cos(through.angle - beside.angle)).toBeCloseTo(-1, 9);
    expect(Math.sign(onLeft(through, post))).toBe(hand === 'left' ? 1 : -1);
    expect(ahead(last, through)).toBeLessThan(-1);
  });

  test('to pull it open the horse first backs away from the leaf; to push it, it does not', () => {
    const moves = (passage?.stations ?? []).flatMap((station) => ('move' in station ? [station.move] : []));
    expect(moves.includes('back')).toBe(how === 'pull');
    if (how === 'push') return;
    const [, opened] = poses;
    if (opened === undefined) throw new Error('no station');
    expect(ahead(beside, opened)).toBeLessThan(0);
    expect(Math.abs(opened.y)).toBeGreaterThan(Math.abs(beside.y));
  });
});

describe('the picture of a gate', () => {
  const figureOf = (values: Values) => {
    const kind = pieceKind('gate');
    if (kind === undefined) throw new Error('no gate');
    return kind.figure({ opening: OPENING, height: 1.5, latch: 'end', style: 'leaf', ...values });
  };

  test('leaves its opening free between the posts, whichever way it is made', () => {
    for (const style of ['leaf', 'rope']) {
      const { marks } = figureOf({ style });
      const solid = marks.flatMap((mark) =>
        mark.kind === 'area' && mark.ink !== 'timber' ? [ringBounds(mark.ring)] : [],
      );
      const feet =
        style === 'leaf' ? solid : marks.flatMap((mark) => (mark.kind === 'area' ? [ringBounds(mark.ring)] : []));
      const inner = feet.flatMap(({ minX, maxX }) => [minX, maxX].map(Math.abs));
      expect(Math.min(...inner)).toBeCloseTo(OPENING / 2, 9);
    }
  });

  test('swings about the post across from its latch, to both sides', () => {
    for (const [latch, hinge] of [
      ['end', -OPENING / 2],
      ['start', OPENING / 2],
    ] as const) {
      const swings = figureOf({ latch }).marks.flatMap((mark) =>
        mark.kind === 'line' && mark.ink === 'faint' ? [mark.points] : [],
      );
      expect(swings).toHaveLength(2);
      for (const swing of swings) {
        for (const { x, y } of swing) expect(Math.hypot(x - hinge, y)).toBeCloseTo(OPENING, 9);
      }
      const tops = swings.map((swing) => Math.sign(swing.at(-1)?.y ?? 0));
      expect(tops.sort()).toEqual([-1, 1]);
    }
  });
});

describe('raised poles', () => {
  const ends = (raised: string): readonly string[] =>
    built('raised-run', { poles: 4, raised, height: 0.25, thickness: 0.1 }).pieces.map(({ values }) => {
      const up = (value: unknown) => (value === 0 ? '_' : Math.abs(Number(value) - 0.15) < 1e-9 ? '^' : '?');
      return `${up(values.raisedStart)}${up(values.raisedEnd)}`;
    });

  test('by turns: one end, then the other, never two alike beside each other', () => {
    expect(ends('alternate')).toEqual(['_^', '^_', '_^', '^_']);
  });

  test('the same end, or both', () => {
    expect(ends('same')).toEqual(['_^', '_^', '_^', '_^']);
    expect(ends('both')).toEqual(['^^', '^^', '^^', '^^']);
  });
});
