/** Layouts of a few poles with more constraints than most of them can meet. */

import { seededRandom } from '../../../src/core/change/seeded-random.ts';
import type { Constraint } from '../../../src/core/constraints/constraint.ts';
import type { Layout } from '../../../src/core/course/course.ts';
import { layoutOf, single } from './nets.ts';

/** Two to four poles near each other and near a wall, with four to eight constraints drawn at random. */
export function tangle(seed: number): Layout {
  const roll = seededRandom(20000 + seed);
  const between = (least: number, most: number) => least + (most - least) * roll();
  const pick = <T>(list: readonly T[]): T => list[Math.floor(roll() * list.length)] as T;
  const count = 2 + Math.floor(roll() * 3);
  const poles = Array.from({ length: count }, (_, i) =>
    single(`p${i}`, { x: 60 + between(-3, 3), y: 4 + i * between(0.8, 2) + between(0, 2), angle: between(-3, 3) }),
  );
  const constraints = Array.from({ length: 4 + Math.floor(roll() * 5) }, (_, i): Constraint => {
    const a = Math.floor(roll() * count);
    const b = (a + 1 + Math.floor(roll() * (count - 1))) % count;
    const at = () => pick([0, 1 / 3, 0.5, 2 / 3, 1]);
    const pair = [
      { piece: `p${a}/only`, at: at() },
      { piece: `p${b}/only`, at: at() },
    ];
    const side = pick([1, -1] as const);
    const wall = [{ piece: `p${a}/only`, at: at() }, { wall: 'south' as const }];
    const id = `c${i}`;
    const kind = pick([
      'gap',
      'gap',
      'parallel',
      'square',
      'angle-between',
      'in-line',
      'off-wall',
      'angle-to-wall',
      'on-line',
    ]);
    if (kind === 'gap') return { id, kind, grips: pair, hold: between(0.4, 2.5), side };
    if (kind === 'angle-between') return { id, kind, grips: pair, hold: between(0.2, 2.8), side };
    if (kind === 'off-wall') return { id, kind, grips: wall, hold: between(0.5, 5) };
    if (kind === 'angle-to-wall') return { id, kind, grips: wall, hold: between(0, 3), side };
    return { id, kind, grips: pair };
  });
  return layoutOf(poles, constraints);
}
