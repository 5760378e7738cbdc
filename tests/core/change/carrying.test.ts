import munkres from 'munkres';
import { describe, expect, test } from 'vitest';
import { type Carrying, carryingCost, leastCarrying, truckCost } from '../../../src/core/change/carrying.ts';
import type { Load } from '../../../src/core/change/change-over.ts';
import { loadsOf } from '../../../src/core/change/loads.ts';
import { feet, inches } from '../../../src/core/measure/quantity.ts';
import { bruteTotal, fullCosts, ground, nextThings, randomThings, type Thing } from './grounds.ts';

const TRUCK = { x: 0, y: 15 };
const CHARGE = 6;

function carrying(from: readonly Thing[], to: readonly Thing[], people = 2): Carrying {
  return leastCarrying(loadsOf(ground(from), people), loadsOf(ground(to), people), TRUCK);
}

function one(thing: Thing, people = 2): Load {
  const [load] = loadsOf(ground([thing]), people);
  if (load === undefined) throw new Error('one thing is one load');
  return load;
}

const at = (x: number, y: number, angle = 0) => ({ x, y, angle });

describe('what it costs to carry', () => {
  test('a long pole is how far both of its ends are walked, and the charge', () => {
    const cost = carryingCost(one({ sort: 'banded', pose: at(0, 0) }), one({ sort: 'banded', pose: at(3, 4) }));
    expect(cost).toBeCloseTo(CHARGE + 10, 9);
  });

  test('one person alone holds it by its middle', () => {
    const [a, b] = [at(0, 0), at(3, 4)].map((pose) => one({ sort: 'banded', pose }, 1)) as [Load, Load];
    expect(carryingCost(a, b)).toBeCloseTo(CHARGE + 5, 9);
  });

  test('a pole of 10 ft has two carriers and one of 8 ft has one', () => {
    const lengths = [feet(10), feet(9.99), feet(8)];
    const held = lengths.map((length) => {
      const [placed] = ground([{ sort: 'banded', pose: at(0, 0) }]);
      const [piece] = placed?.pieces ?? [];
      if (placed === undefined || piece === undefined) throw new Error('there is one piece');
      const other = { ...piece, piece: { ...piece.piece, values: { ...piece.piece.values, length } } };
      return loadsOf([{ ...placed, pieces: [other] }], 2)[0]?.held.length;
    });
    expect(held).toEqual([2, 1, 1]);
  });

  test('a pole turned half around lies right, and so does one that is an inch off', () => {
    const pole = one({ sort: 'banded', pose: at(5, 5, 0.3) });
    expect(carryingCost(pole, one({ sort: 'banded', pose: at(5, 5, 0.3 + Math.PI) }))).toBe(0);
    expect(carryingCost(pole, one({ sort: 'banded', pose: at(5 + inches(1), 5, 0.3) }))).toBe(0);
    expect(carryingCost(pole, one({ sort: 'banded', pose: at(5 + inches(1.1), 5, 0.3) }))).toBeGreaterThan(CHARGE);
  });

  test('a short pole that is turned on the spot is picked up, though nobody walks', () => {
    const [a, b] = [0, Math.PI / 2].map((angle) => one({ sort: 'short', pose: at(5, 5, angle) })) as [Load, Load];
    expect(carryingCost(a, b)).toBe(CHARGE);
  });

  test('a gate is turned around when its latch changes sides, unless it is itself turned', () => {
    const gate = (latch: string, angle: number): Load => {
      const load = one({ sort: 'gate', pose: at(5, 5, angle) });
      const [placed] = ground([{ sort: 'gate', pose: at(5, 5, angle) }]);
      const [piece] = placed?.pieces ?? [];
      if (placed === undefined || piece === undefined) throw new Error('there is one gate');
      const other = { ...piece, piece: { ...piece.piece, values: { ...piece.piece.values, latch } } };
      return loadsOf([{ ...placed, pieces: [other] }], 2)[0] ?? load;
    };
    const length = feet(6) + 2 * inches(4);
    expect(gate('start', 0).type).toBe(gate('end', 0).type);
    expect(carryingCost(gate('end', 0), gate('start', 0))).toBeCloseTo(CHARGE + 2 * length, 9);
    expect(carryingCost(gate('end', 0), gate('end', Math.PI))).toBeCloseTo(CHARGE + 2 * length, 9);
    expect(carryingCost(gate('end', 0), gate('start', Math.PI))).toBe(0);
  });

  test('a bridge lies the same turned half around, a mailbox does not, a marker lies the same however it is turned', () => {
    const turned = (sort: Thing['sort'], by: number) =>
      carryingCost(one({ sort, pose: at(5, 5, 0) }), one({ sort, pose: at(5, 5, by) }));
    expect([turned('bridge', Math.PI), turned('mailbox', Math.PI), turned('marker', 1)]).toEqual([0, CHARGE, 0]);
  });

  test('is never more by the truck than straight, and is the same both ways', () => {
    const things = randomThings(3, 60);
    for (const [i, a] of things.entries()) {
      for (const b of things.slice(i)) {
        if (a.sort !== b.sort) continue;
        const [from, to] = [one(a), one(b)];
        expect(carryingCost(from, to)).toBeLessThanOrEqual(truckCost(from, TRUCK) + truckCost(to, TRUCK));
        expect(carryingCost(from, to)).toBeCloseTo(carryingCost(to, from), 9);
      }
    }
  });
});

/** The proven least cost of a random change-over, and what the other way finds. */
function bothTotals(seed: number, count: number, solve: (costs: readonly (readonly number[])[]) => number) {
  const from = randomThings(seed, count);
  const to = nextThings(from, seed);
  const people = 1 + (seed % 4);
  const ours = carrying(from, to, people);
  const theirs = fullCosts(from, to, { truckAt: TRUCK, people }).reduce((sum, costs) => sum + solve(costs), 0);
  return { ours, theirs };
}

function munkresTotal(costs: readonly (readonly number[])[]): number {
  return munkres(costs.map((row) => [...row])).reduce(
    (sum, [row, column]) => sum + (costs[row]?.[column] as number),
    0,
  );
}

describe('the least carrying', () => {
  test('of 100 small change-overs is what brute force finds, though it may send any number by the truck', () => {
    for (let seed = 0; seed < 100; seed += 1) {
      const { ours, theirs } = bothTotals(seed, 5, bruteTotal);
      expect(ours.cost, `seed ${seed}`).toBeCloseTo(theirs, 6);
      expect(ours.leastCost, `seed ${seed}`).toBeCloseTo(theirs, 6);
    }
  });

  test('of 100 large ones is what the munkres package finds', () => {
    for (let seed = 100; seed < 200; seed += 1) {
      const { ours, theirs } = bothTotals(seed, 40, munkresTotal);
      expect(ours.cost, `seed ${seed}`).toBeCloseTo(theirs, 6);
      expect(ours.leastCost, `seed ${seed}`).toBeCloseTo(theirs, 6);
    }
  });

  test('leaves one of two things where the one lies right for the other', () => {
    for (let seed = 0; seed < 40; seed += 1) {
      const from = randomThings(seed, 30);
      const { stays, errands } = carrying(from, nextThings(from, seed));
      const moved = errands.flatMap((each) => (each.from.kind === 'ground' ? [each.from.load] : []));
      const laid = errands.flatMap((each) => (each.to.kind === 'ground' ? [each.to.load] : []));
      for (const load of moved) {
        for (const place of laid) if (load.type === place.type) expect(carryingCost(load, place)).toBeGreaterThan(0);
      }
      expect(stays.every(({ off }) => off <= inches(1) + 1e-9)).toBe(true);
    }
  });

  test('a raised pole that becomes a flat one stays, and its riser goes to the truck', () => {
    const pole: Thing = { sort: 'banded', pose: at(20, 10, 1) };
    const { stays, errands } = carrying([{ ...pole, raised: [0, inches(6)] }], [pole]);
    expect(stays.length).toBe(1);
    expect(errands.map(({ load, to }) => [load.key, load.thing, to.kind])).toEqual([
      ['free-1/pole-1:end', 'riser', 'truck'],
    ]);
  });

  test('poles of other paint or length do not stand in for each other', () => {
    const pose = at(20, 10, 1);
    const { stays, errands } = carrying([{ sort: 'banded', pose }], [{ sort: 'plain', pose }]);
    expect(stays).toEqual([]);
    expect(errands.map(({ from, to }) => [from.kind, to.kind]).sort()).toEqual([
      ['ground', 'truck'],
      ['truck', 'ground'],
    ]);
  });
});
