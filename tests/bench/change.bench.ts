import munkres from 'munkres';
import { assignment } from '../../src/core/change/assignment.ts';
import { bestWalk, searched } from '../../src/core/change/best-walk.ts';
import { leastCarrying } from '../../src/core/change/carrying.ts';
import { loadsOf } from '../../src/core/change/loads.ts';
import { changeOver } from '../../src/core/change/plan-change-over.ts';
import { seededRandom } from '../../src/core/change/seeded-random.ts';
import { canCarry, divisions, schedule } from '../../src/core/change/walk.ts';
import { exactWalk } from '../../src/core/change/walk-exact.ts';
import { bruteTotal, fullCosts, ground, nextThings, randomThings, type Thing } from '../core/change/grounds.ts';
import { bruteSeconds, randomWalk } from '../core/change/walk-oracle.ts';
import { percentile, type Row, row, timed } from './row.ts';

const FRAMES = 33;
const TRUCK = { x: 0, y: 15 };
const CHANGE_OVERS = 200;

function munkresTotal(costs: readonly (readonly number[])[]): number {
  return munkres(costs.map((line) => [...line])).reduce((sum, [i, j]) => sum + (costs[i]?.[j] as number), 0);
}

/** Straight distances between random points, as between poles before and after. */
function distances(size: number, seed: number): number[][] {
  const roll = seededRandom(seed);
  const points = () => Array.from({ length: size }, () => ({ x: 60 * roll(), y: 30 * roll() }));
  const to = points();
  return points().map((a) => to.map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
}

function assignmentRow(): Row {
  const costs = (i: number) => distances(150, i);
  timed(5, costs, (each) => void assignment(each));
  const ours = percentile(
    timed(20, costs, (each) => void assignment(each)),
    0.5,
  );
  const theirs = percentile(
    timed(5, costs, (each) => void munkres(each)),
    0.5,
  );
  return row('assignment of 150 to 150, p50', 'ms', { ours, anchor: theirs, anchorName: 'the munkres package' });
}

/** The sum of the differences in cost, and the largest gap between the cost and its bound. */
function costRows(): Row[] {
  let [off, gap] = [0, 0];
  for (let seed = 0; seed < CHANGE_OVERS; seed += 1) {
    const isSmall = seed < CHANGE_OVERS / 2;
    const from = randomThings(seed, isSmall ? 5 : 40);
    const to = nextThings(from, seed);
    const people = 1 + (seed % 4);
    const { cost, leastCost } = leastCarrying(loadsOf(ground(from), people), loadsOf(ground(to), people), TRUCK);
    const solve = isSmall ? bruteTotal : munkresTotal;
    const least = fullCosts(from, to, { truckAt: TRUCK, people }).reduce((sum, costs) => sum + solve(costs), 0);
    off += Math.abs(cost - least);
    gap = Math.max(gap, Math.abs(cost - leastCost));
  }
  return [
    row('200 change-overs against brute force and munkres: cost off by, all together', 'm', wanted(off)),
    row('the same: largest gap between the cost and its dual bound', 'm', wanted(gap)),
  ];
}

function wanted(ours: number) {
  return { ours: ours < 1e-6 ? 0 : ours, anchor: 0, anchorName: 'wanted (below 1e-6 is 0)' };
}

/** Poles of one type at random places; none lies where one lay. */
function poles(count: number, seed: number): readonly Thing[] {
  const roll = seededRandom(seed);
  return Array.from({ length: count }, () => ({
    sort: 'banded' as const,
    pose: { x: 90 * roll(), y: 45 * roll(), angle: 3 * roll() },
  }));
}

function planRows(): Row[] {
  const sizes = [
    [60, 150, 'asked for'],
    [150, 500, 'estimate: what a person waits for without a sign'],
  ] as const;
  const crew = { people: 2, truckAt: TRUCK };
  const pair = (count: number) => (i: number) => [ground(poles(count, i)), ground(poles(count, 500 + i))] as const;
  const assigned = timed(12, pair(150), ([a, b]) => void leastCarrying(loadsOf(a, 2), loadsOf(b, 2), TRUCK)).slice(3);
  return [
    row('which of 150 poles goes where, p50', 'ms', {
      ours: percentile(assigned, 0.5),
      anchor: FRAMES,
      anchorName: 'two frames of a 60 Hz screen',
    }),
    ...sizes.map(([count, anchor, anchorName]) => {
      const times = timed(9, pair(count), ([a, b]) => void changeOver(a, b, crew)).slice(2);
      return row(`change-over of ${count} poles with its walk, p50`, 'ms', {
        ours: percentile(times, 0.5),
        anchor,
        anchorName,
      });
    }),
  ];
}

/** The worst difference to brute force over problems of eight carries, for each crew. */
function exactRows(): Row[] {
  return [1, 2, 3, 4].map((people) => {
    let worst = 0;
    for (let seed = 0; seed < 12; seed += 1) {
      const kinds = { small: people === 1 ? 0.2 : 0.25, later: seed % 2 === 0 ? 0.3 : 0 };
      const made = randomWalk(seed + 1000 * people, { count: 8, ...kinds });
      const problem = people === 1 ? { ...made, bulk: made.bulk.map((each) => Math.min(each, made.hands)) } : made;
      for (const teams of divisions(people)) {
        if (!canCarry(problem, teams)) continue;
        const ours = schedule(problem, teams, exactWalk(problem, teams)).seconds;
        // Orders that take longer than ours by more than a hair are of no interest: none may take less.
        worst = Math.max(worst, Math.abs(ours - bruteSeconds(problem, teams, ours + 1e-6)));
      }
    }
    return row(`walks of 8 carries by ${people}: worst difference to brute force`, 's', {
      ...wanted(worst),
      anchorName: 'every order of every share',
    });
  });
}

/** How much longer the walk is than one that was sought 20 times as long, the worst of some. */
function searchRows(): Row[] {
  return [15, 30, 60].flatMap((count) => {
    let worst = 0;
    const times: number[] = [];
    for (let seed = 0; seed < 4; seed += 1) {
      const people = 1 + (seed % 4);
      const made = randomWalk(seed + count, { count, small: 0.2, later: 0.2 });
      const problem = people === 1 ? { ...made, bulk: made.bulk.map((each) => Math.min(each, made.hands)) } : made;
      const from = performance.now();
      const ours = bestWalk(problem, people).schedule.seconds;
      times.push(performance.now() - from);
      const long = Math.min(ours, searched(problem, people, 20).schedule.seconds);
      worst = Math.max(worst, 100 * (ours / long - 1));
    }
    return [
      row(`walks of ${count} carries by 1 to 4: longer than a search 20 times as long, worst`, '%', {
        ours: worst,
        anchor: 5,
        anchorName: 'asked for',
      }),
      row(`the same: time of the search, p50`, 'ms', {
        ours: percentile(times, 0.5),
        anchor: 150,
        anchorName: 'asked for at 60 carries',
      }),
    ];
  });
}

/** Which thing goes where against brute force and a package; walks against every order and a longer search. */
export async function rows(): Promise<Row[]> {
  return [assignmentRow(), ...costRows(), ...planRows(), ...exactRows(), ...searchRows()];
}
