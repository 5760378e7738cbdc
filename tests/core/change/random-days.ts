/** Days drawn by a seed, and the best order of one by trying every order. */
import { comparedCosts, type DayCost } from '../../../src/core/change/day-cost.ts';
import type { DayProblem, DayTask } from '../../../src/core/change/day-problem.ts';
import { seededRandom } from '../../../src/core/change/seeded-random.ts';

const MINUTE = 60;

export function task(id: string, minutes: number, more: Partial<DayTask> = {}): DayTask {
  const seconds = minutes * MINUTE;
  return { id, layout: id, seconds, riding: seconds, dragging: 0, drags: [], riders: [], ...more };
}

/** A table of change-overs by layout in minutes; `-` is the empty arena. */
export function changes(table: Readonly<Record<string, number>>, other = 10): DayProblem['changeOver'] {
  return (from, to) => (from === to ? 0 : (table[`${from ?? '-'} ${to ?? '-'}`] ?? other) * MINUTE);
}

/** A day of so many classes on fewer layouts, with breaks, judges, fixed starts and riders in several classes. */
export function randomDay(seed: number, count: number): DayProblem {
  const roll = seededRandom(seed);
  const whole = (least: number, most: number): number => least + Math.floor(roll() * (most - least + 1));
  const layouts = whole(Math.max(1, count - 5), count);
  const places = Array.from({ length: layouts + 1 }, () => ({ x: 10 * roll(), y: 10 * roll() }));
  const judges = roll() < 0.6 ? ['A', 'B', 'C'] : [];
  const tasks = Array.from({ length: count }, (_, i): DayTask => {
    const judge = judges[whole(0, 4)];
    const riders = Array.from({ length: whole(0, 2) }, () => String(whole(1, 2 * count)));
    const startsAt = roll() < 0.15 ? (8 + whole(0, 8)) * 60 * MINUTE : undefined;
    return task(`c${i}`, whole(8, 80), {
      layout: `layout-${whole(1, layouts)}`,
      riders: [...new Set(riders)],
      ...(judge === undefined ? {} : { judge }),
      ...(startsAt === undefined ? {} : { startsAt }),
    });
  });
  const breaks = [10.5, 12, 15]
    .filter(() => roll() < 0.6)
    .map((hour, i) => ({ id: `break-${i}`, title: 'Break', from: hour * 60 * MINUTE, length: whole(10, 60) * MINUTE }));
  const index = (layout: string | null): number => (layout === null ? 0 : Number(layout.slice(7)));
  return {
    ...{ starts: 8 * 60 * MINUTE, tasks, breaks, rest: whole(0, 40) * MINUTE },
    changeOver: (from, to) => {
      const [a, b] = [places[index(from)], places[index(to)]];
      return from === to || a === undefined || b === undefined ? 0 : Math.hypot(a.x - b.x, a.y - b.y) * 5 * MINUTE;
    },
  };
}

/**
 * The cost of the best of all orders, by trying every one. Its arithmetic is its own: nothing is taken from the code under
 * test but how two costs compare.
 */
export function bestOfAll({ starts, tasks, breaks, rest, changeOver }: DayProblem): DayCost {
  let best: DayCost | undefined;
  const ends = new Map<string, number>();
  const taken = new Set<string>();
  const visit = (
    clock: number,
    lies: string | null,
    cost: { broken: number; late: number; changing: number },
  ): void => {
    if (ends.size === tasks.length) {
      const down = changeOver(lies, null);
      const whole = { ...cost, finish: clock + down, changing: cost.changing + down };
      if (best === undefined || comparedCosts(whole, best) < 0) best = whole;
      return;
    }
    const last = tasks.find(({ id }) => ends.get(id) === Math.max(...ends.values()) && ends.size > 0);
    for (const next of tasks) {
      if (ends.has(next.id)) continue;
      const change = changeOver(lies, next.layout);
      const rested = tasks
        .filter(({ id, riders }) => ends.has(id) && riders.some((rider) => next.riders.includes(rider)))
        .map(({ id }) => (ends.get(id) ?? 0) + rest);
      let from = Math.max(clock + change, next.startsAt ?? 0, ...rested);
      let free = clock;
      const now: string[] = [];
      for (const { id, from: due, length } of breaks) {
        if (taken.has(id) || Math.max(due, free) > from) continue;
        free = Math.max(due, free) + length;
        from = Math.max(from, free);
        now.push(id);
      }
      const over = next.startsAt === undefined || from <= next.startsAt + MINUTE ? 0 : from - next.startsAt;
      const rode = next.judge !== undefined && tasks.some(({ id, judge }) => ends.has(id) && judge === next.judge);
      const splits = rode && last?.judge !== next.judge;
      for (const id of now) taken.add(id);
      ends.set(next.id, from + next.seconds);
      visit(from + next.seconds, next.layout, {
        broken: cost.broken + (over > 0 ? 1 : 0) + (splits ? 1 : 0),
        late: cost.late + over,
        changing: cost.changing + change,
      });
      ends.delete(next.id);
      for (const id of now) taken.delete(id);
    }
  };
  visit(starts, null, { broken: 0, late: 0, changing: 0 });
  if (best === undefined) throw new Error('bestOfAll: there is no order');
  return best;
}
