import { describe, expect, test } from 'vitest';
import { leastCarrying } from '../../../src/core/change/carrying.ts';
import type { Crew } from '../../../src/core/change/change-over.ts';
import { footprintOf, loadAt, loadsOf } from '../../../src/core/change/loads.ts';
import { inPasses, type Task } from '../../../src/core/change/passes.ts';
import { seededRandom } from '../../../src/core/change/seeded-random.ts';
import { inches } from '../../../src/core/measure/quantity.ts';
import { overlapArea } from '../../../src/core/plane/clip.ts';
import { ground, nextThings, randomThings, type Thing } from './grounds.ts';

const CREW: Crew = { people: 2, truckAt: { x: 0, y: 15 } };

function tasksOf(from: readonly Thing[], to: readonly Thing[]): readonly Task[] {
  const [lying, wanted] = [loadsOf(ground(from), 2), loadsOf(ground(to), 2)];
  return inPasses(leastCarrying(lying, wanted, CREW.truckAt).errands, [...lying, ...wanted], CREW);
}

const at = (x: number, y: number, angle = 0) => ({ x, y, angle });
/** What lies in the way when a pass is laid: nothing but what the pass before has left. */
function expectNothingInTheWay(from: readonly Thing[], to: readonly Thing[]): void {
  const tasks = tasksOf(from, to);
  const passes = Math.max(0, ...tasks.map(({ pass }) => pass));
  for (const task of tasks) {
    if (task.to.kind !== 'ground' || task.load.thing === 'riser') continue;
    const ring = footprintOf(task.to.load);
    for (const other of tasks) {
      if (other === task || other.from.kind !== 'ground' || other.pass < task.pass) continue;
      expect(overlapArea(ring, footprintOf(other.from.load))).toBeLessThanOrEqual(4e-4);
    }
  }
  expect(new Set(tasks.map(({ pass }) => pass)).size).toBe(passes);
}

describe('passes', () => {
  test('one is enough where nothing lies in the way', () => {
    const tasks = tasksOf([{ sort: 'banded', pose: at(10, 10) }], [{ sort: 'banded', pose: at(30, 10) }]);
    expect(tasks.map(({ pass }) => pass)).toEqual([1]);
  });

  test('a pole that will lie where another is taken away waits for it', () => {
    const tasks = tasksOf(
      [{ sort: 'banded', pose: at(10, 10) }],
      [
        { sort: 'plain', pose: at(10, 10, 1) },
        { sort: 'banded', pose: at(40, 20) },
      ],
    );
    expect(tasks.map(({ load, pass }) => [load.key, pass]).sort()).toEqual([
      ['free-1/pole-1', 2],
      ['free-2/pole-1', 1],
    ]);
  });

  test('a chain of three takes three passes', () => {
    const tasks = tasksOf(
      [
        { sort: 'banded', pose: at(10, 10) },
        { sort: 'plain', pose: at(20, 10) },
        { sort: 'bridge', pose: at(30, 10) },
      ],
      [
        { sort: 'banded', pose: at(20, 10) },
        { sort: 'plain', pose: at(30, 10) },
        { sort: 'bridge', pose: at(50, 10) },
      ],
    );
    expect(tasks.map(({ load, pass }) => [load.piece.kind, load.key, pass]).sort()).toEqual([
      ['bridge', 'free-3/bridge-1', 1],
      ['pole', 'free-1/pole-1', 3],
      ['pole', 'free-2/pole-1', 2],
    ]);
  });

  test('of two that change places one is laid aside, clear of everything', () => {
    const from: Thing[] = [
      { sort: 'banded', pose: at(10, 10) },
      { sort: 'plain', pose: at(20, 10) },
    ];
    const to: Thing[] = [
      { sort: 'banded', pose: at(20, 10) },
      { sort: 'plain', pose: at(10, 10) },
    ];
    const tasks = tasksOf([...from, { sort: 'marker', pose: at(5, 5) }], [...to, { sort: 'marker', pose: at(25, 25) }]);
    const aside = tasks.filter(({ to }) => to.kind === 'aside');
    const on = tasks.filter(({ from }) => from.kind === 'aside');
    expect([aside.length, on.length]).toEqual([1, 1]);
    expect([aside[0]?.pass, on[0]?.pass, tasks.length]).toEqual([1, 3, 4]);
    const [{ to: stop, load } = { to: undefined, load: undefined }] = aside;
    if (stop?.kind !== 'aside' || load === undefined) throw new Error('one is laid aside');
    expect(stop).toEqual(on[0]?.from);
    const lies = footprintOf(loadAt(load, stop.at));
    for (const each of loadsOf(ground([...from, ...to]), 2)) expect(overlapArea(lies, footprintOf(each))).toBe(0);
    expect(aside[0]?.metres).toBeCloseTo(2 * Math.hypot(stop.at.x - (stop.at.x > 15 ? 20 : 10), stop.at.y - 10), 0);
  });

  test('where there is no free place it waits at the truck', () => {
    const tasks = tasksOf(
      [
        { sort: 'banded', pose: at(10, 10) },
        { sort: 'plain', pose: at(10, 10.2) },
      ],
      [
        { sort: 'plain', pose: at(10, 10) },
        { sort: 'banded', pose: at(10, 10.2) },
      ],
    );
    expect(tasks.map(({ from, to, pass }) => `${from.kind} to ${to.kind}, ${pass}`).sort()).toEqual([
      'ground to ground, 2',
      'ground to truck, 1',
      'truck to ground, 3',
    ]);
  });

  test('a riser comes with its pole', () => {
    const tasks = tasksOf(
      [{ sort: 'banded', pose: at(10, 10) }],
      [
        { sort: 'plain', pose: at(10, 10, 1), raised: [inches(6), inches(6)] },
        { sort: 'banded', pose: at(40, 20) },
      ],
    );
    expect(tasks.filter(({ load }) => load.thing === 'riser').map(({ pass }) => pass)).toEqual([2, 2]);
  });

  test('nothing is laid over what is still to be moved where all things change places', () => {
    let aside = 0;
    for (let seed = 0; seed < 20; seed += 1) {
      const from = randomThings(seed, 14);
      const roll = seededRandom(seed + 500);
      const order = from.map(({ pose }) => ({ pose, by: roll() })).sort((a, b) => a.by - b.by);
      const to = from.map((thing, i) => ({ ...thing, pose: order[i]?.pose ?? thing.pose }));
      expectNothingInTheWay(from, to);
      const tasks = tasksOf(from, to);
      aside += tasks.filter((each) => each.from.kind === 'aside').length;
      for (const { from: stop, load } of tasks) {
        if (stop.kind !== 'aside') continue;
        const lies = footprintOf(loadAt(load, stop.at));
        for (const each of loadsOf(ground([...from, ...to]), 2)) expect(overlapArea(lies, footprintOf(each))).toBe(0);
      }
    }
    expect(aside).toBeGreaterThan(10);
  });

  test('nothing is ever laid over what is still to be moved', () => {
    for (let seed = 0; seed < 30; seed += 1) {
      // So crowded that passes and circles come up often.
      const squeeze = (things: readonly Thing[]) =>
        things.map((each) => ({ ...each, pose: { ...each.pose, x: each.pose.x / 4, y: each.pose.y / 3 } }));
      const from = randomThings(seed, 20);
      expectNothingInTheWay(squeeze(from), squeeze(nextThings(from, seed)));
    }
  });
});
