import { describe, expect, test } from 'vitest';
import {
  type CarryNames,
  carrySentence,
  changeOverCautions,
  countedLoads,
  loadWords,
  truckLoads,
  truckWords,
  wallWords,
} from '../../../src/core/change/carry-words.ts';
import type { ChangeOver, Load } from '../../../src/core/change/change-over.ts';
import { loadsOf } from '../../../src/core/change/loads.ts';
import { changeOver } from '../../../src/core/change/plan-change-over.ts';
import type { Layout } from '../../../src/core/course/course.ts';
import { feet, inches } from '../../../src/core/measure/quantity.ts';
import { ground, type Thing } from './grounds.ts';

const ARENA = {
  title: 'Ring',
  length: feet(200),
  width: feet(100),
  entrance: { wall: 'west', at: 15, width: 4 },
} as const;
const at = (x: number, y: number, angle = 0) => ({ x, y, angle });

function layout(things: readonly Thing[]): Layout {
  const obstacles = ground(things).map(({ obstacle }) => obstacle);
  return { id: 'layout-1', title: 'Layout 1', obstacles, constraints: [], ride: { start: at(0, 0), legs: [] } };
}

function planned(from: readonly Thing[], to: readonly Thing[], people = 2): { plan: ChangeOver; names: CarryNames } {
  const plan = changeOver(ground(from), ground(to), { people, truckAt: { x: 0, y: 15 } });
  return { plan, names: { from: layout(from), to: layout(to), unit: 'ft' } };
}

function words(thing: Thing, unit: 'ft' | 'm' = 'ft'): readonly string[] {
  return loadsOf(ground([thing]), 2).map((load: Load) => loadWords(load, unit));
}

describe('what a crew is told', () => {
  test('of a thing is its size and what is not usual about it, and nothing of how it is set up', () => {
    const pose = at(0, 0);
    expect(words({ sort: 'banded', pose })).toEqual(["12' pole"]);
    expect(words({ sort: 'plain', pose }, 'm')).toEqual(['3.66 m pole, plain']);
    expect(words({ sort: 'short', pose, raised: [0, inches(6)] })).toEqual(["8' pole", '6" riser']);
    expect(words({ sort: 'gate', pose })).toEqual(['gate']);
    expect(words({ sort: 'marker', pose })).toEqual(['marker']);
  });

  test('of a carry is the thing, where from, where to, and how far each carrier goes', () => {
    const { plan, names } = planned([{ sort: 'banded', pose: at(10, 10) }], [{ sort: 'banded', pose: at(13, 14) }]);
    expect(plan.carries.map((carry) => carrySentence(carry, names))).toEqual([
      "12' pole from the own obstacle to the own obstacle: 16' 4¾\"",
    ]);
  });

  test('of a riser is the end of the pole that it holds up', () => {
    const pole: Thing = { sort: 'banded', pose: at(10, 10) };
    const { plan, names } = planned([pole], [{ ...pole, raised: [inches(4), 0] }]);
    expect(plan.carries.map((carry) => carrySentence(carry, names))).toEqual([
      expect.stringMatching(/^4" riser from the truck to the start of the own obstacle: \d+' /),
    ]);
  });

  test('of a place is the nearer of each two walls', () => {
    expect(wallWords({ x: feet(12), y: feet(92) }, ARENA, 'ft')).toBe(
      "12' from the west wall and 8' from the north wall",
    );
    expect(wallWords({ x: feet(150), y: feet(8) }, ARENA, 'ft')).toBe(
      "50' from the east wall and 8' from the south wall",
    );
    expect(truckWords({ people: 2, truckAt: { x: 0, y: 15 } }, ARENA, 'ft')).toBe('in the entrance');
    expect(truckWords({ people: 2, truckAt: { x: feet(1), y: feet(2) } }, ARENA, 'ft')).toContain(
      "1' from the west wall",
    );
  });

  test('of the truck is what comes for good, not what only waits there', () => {
    const near = (sort: Thing['sort'], y: number): Thing => ({ sort, pose: at(10, y) });
    const { plan } = planned([near('banded', 10), near('plain', 10.2)], [near('plain', 10), near('banded', 10.2)]);
    expect(plan.carries.some(({ to }) => to.kind === 'truck')).toBe(true);
    expect(truckLoads(plan)).toEqual({ out: [], back: [] });
    const { plan: other } = planned([near('banded', 10)], [near('plain', 20), near('plain', 25)]);
    const { out, back } = truckLoads(other);
    expect([countedLoads(out, 'ft'), countedLoads(back, 'ft')]).toEqual(["2 × 12' pole, plain", "1 × 12' pole"]);
    expect(countedLoads([], 'ft')).toBe('nothing');
  });

  test('beforehand is that times are estimates, and who should not carry alone', () => {
    const from: Thing[] = [{ sort: 'banded', pose: at(10, 10) }];
    const to: Thing[] = [{ sort: 'banded', pose: at(20, 10) }];
    expect(changeOverCautions(planned(from, to).plan)[0]).toMatch(/^The times are estimates/);
    expect(changeOverCautions(planned(from, to).plan).join(' ')).not.toContain('two people');
    expect(changeOverCautions(planned(from, to, 1).plan)).toContain('1 load wants two people, and the crew is one.');
    expect(changeOverCautions(planned(from, from).plan)).toEqual([]);
  });
});
