import { describe, expect, test } from 'vitest';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { sameWork } from '../../../src/core/obstacles/same-work.ts';

function built(kind: string): Obstacle {
  const obstacle = buildObstacle(`${kind}-1`, kind, {}, { x: 0, y: 0, angle: 0 });
  if ('why' in obstacle) throw new Error(obstacle.why);
  return obstacle;
}

function same(obstacle: Obstacle, id: string): readonly string[] {
  const passage = obstacle.passages.find((each) => each.id === id);
  if (passage === undefined) throw new Error(`there is no passage ${id}`);
  return sameWork(obstacle, passage).map((each) => each.id);
}

describe('passages that ask the same of the horse', () => {
  test.each([
    ['run', 'return', ['forward', 'return']],
    ['chevron', 'left', ['left', 'right', 'left-return', 'right-return']],
    ['chevron', 'points', ['points', 'points-return']],
    ['back-lane', 'through', ['through', 'through-return']],
    ['back-u', 'in-and-back', ['in-and-back', 'in-and-back-return']],
    ['back-t', 'in-left', ['in-left', 'in-right']],
    ['box', 'half-left', ['half-left', 'half-right', 'half-left-return', 'half-right-return']],
    ['side-pass-v', 'haunches', ['haunches', 'haunches-return']],
    ['gate', 'left-pull', ['left-pull', 'right-pull']],
  ])('%s: beside %s there are %j', (kind, id, expected) => {
    expect(same(built(kind), id)).toEqual(expected);
  });

  test('a pole that was raised by hand is not the same to cross as a flat one', () => {
    const box = built('box');
    const pieces = box.pieces.map((piece) =>
      piece.id === 'north' ? { ...piece, values: { ...piece.values, raisedStart: 0.2 } } : piece,
    );
    expect(same({ ...box, pieces }, 'half-left')).toEqual(['half-left', 'half-right']);
    expect(same({ ...box, pieces }, 'through')).toEqual(['through', 'through-return']);
  });
});
