import { expect, test } from 'vitest';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import { pathFrom } from '../../../src/core/plane/path.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { allowance, goings } from '../../../src/core/ride/clock.ts';
import type { Going, LineElement } from '../../../src/core/ride/line.ts';

function element(move: LineElement['move'], gait: LineElement['gait']): LineElement {
  const path = pathFrom(pose(0, 0), [{ length: 1, curvature: 0 }]);
  return { leg: 0, part: 'obstacle', move, gait, path, from: 0, length: 1, facing: 0, turn: 0, moving: 0, seconds: 1 };
}

const { transition, halt, back, sidePass } = STOCK_HORSE;

test.each<[Going, LineElement['move'], LineElement['gait'], number]>([
  ['jog', 'ride', 'jog', 0],
  ['walk', 'ride', 'lope', transition.up.value],
  ['lope', 'ride', 'jog', transition.down.value],
  ['standing', 'ride', 'walk', transition.up.value],
  ['jog', 'turn', 'walk', halt.value],
  ['standing', 'turn', 'walk', 0],
  ['walk', 'back', 'walk', halt.value + back.settle.value],
  ['standing', 'side-pass', 'walk', sidePass.settle.value],
])('from %s into a %s at a %s takes %f s beside the moving', (before, move, gait, seconds) => {
  const into = element(move, gait);
  const [after = 'standing'] = goings([into]);
  expect(allowance(into, [before, after], STOCK_HORSE)).toBeCloseTo(seconds, 12);
});

test('a corner that is ridden up to and on from is no halt; one before a back is, and a turn about', () => {
  const turned = (turn: number): LineElement => ({ ...element('turn', 'walk'), length: 0, turn });
  const [walk, back] = [element('ride', 'walk'), element('back', 'walk')];
  expect(goings([walk, turned(1), walk])).toEqual(['walk', 'walk', 'walk']);
  expect(goings([walk, turned(1), back])).toEqual(['walk', 'standing', 'standing']);
  expect(goings([walk, turned(Math.PI), walk])).toEqual(['walk', 'standing', 'walk']);
});
