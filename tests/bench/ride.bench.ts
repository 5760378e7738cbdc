/** The router against trying everything, and the prints of the largest seed against its survey from cold. */
import { readFileSync } from 'node:fs';
import { readCourse } from '../../src/core/files/read.ts';
import { STOCK_HORSE } from '../../src/core/horses/horses.ts';
import { minTurnRadius } from '../../src/core/horses/turns.ts';
import { pathCost } from '../../src/core/ride/collision-cost.ts';
import { shortestRoute } from '../../src/core/ride/route.ts';
import { survey } from '../../src/core/survey.ts';
import { printNotesOf, printsOf } from '../../src/core/survey-prints.ts';
import { latticeLength } from '../core/ride/lattice.ts';
import { bareEnd, type SmallArena, smallArena } from '../core/ride/small-arenas.ts';
import { percentile, type Row, row, timed } from './row.ts';

const SEEDS = Array.from({ length: 200 }, (_, i) => i + 1);
const RADIUS = minTurnRadius(STOCK_HORSE, 'jog');
const ROUNDS = 60;
const WARM_UP = 20;

function route({ small, obstacles, begin, finish }: SmallArena) {
  const arena = {
    ...{ title: 'Small', length: small.length, width: small.width },
    entrance: { wall: 'west', at: 1, width: 1 } as const,
  };
  const around = { arena, obstacles, horse: STOCK_HORSE, fromEnd: undefined, toEnd: undefined };
  return shortestRoute({
    begins: [bareEnd(begin)],
    finishes: [bareEnd(finish)],
    radius: RADIUS,
    avoid: [],
    most: 200,
    budgets: [250, 500, 1000, 2000, 4000],
    pathCost: (path) => pathCost(path, around),
  }).route;
}

function router(): Row[] {
  const ours: number[] = [];
  const theirs: number[] = [];
  const lengths: (readonly [number, number])[] = [];
  for (const seed of SEEDS) {
    const arena = smallArena(seed);
    let [found, best]: [number | undefined, number | undefined] = [undefined, undefined];
    const [fast = 0] = timed(
      1,
      () => arena,
      (each) => {
        found = route(each)?.length;
      },
    );
    const { small, begin, finish } = arena;
    const [slow = 0] = timed(
      1,
      () => small,
      (each) => {
        best = latticeLength(begin, finish, { radius: RADIUS, small: each });
      },
    );
    if (best === undefined) continue;
    ours.push(fast);
    theirs.push(slow);
    lengths.push([found ?? Number.POSITIVE_INFINITY, best]);
  }
  const anchorName = 'lattice search';
  const sum = (which: 0 | 1) => lengths.reduce((total, pair) => total + pair[which], 0);
  const worst = lengths.toSorted((a, b) => b[0] / b[1] - a[0] / a[1])[0] ?? [Number.NaN, Number.NaN];
  return [
    ...[0.5, 0.95].map((share) =>
      row(`a way in a small arena, p${share * 100}`, 'ms', {
        ours: percentile(ours, share),
        anchor: percentile(theirs, share),
        anchorName,
      }),
    ),
    row(`all ${lengths.length} ways together`, 'm', { ours: sum(0), anchor: sum(1), anchorName }),
    row('the worst of them', 'm', { ours: worst[0], anchor: worst[1], anchorName }),
  ];
}

function prints(): Row[] {
  const text = readFileSync(new URL('../../seeds/starters/larkhollow-open.course.json', import.meta.url), 'utf8');
  const reading = readCourse(text);
  if (reading.kind !== 'read') throw new Error(`the open seed is refused: ${reading.why}`);
  const { course } = reading;
  const cold = timed(WARM_UP + ROUNDS, () => structuredClone(course), survey);
  const hoofs = timed(WARM_UP + ROUNDS, () => survey(structuredClone(course)), printsOf);
  const notes = timed(
    WARM_UP + ROUNDS,
    () => {
      const surveyed = survey(structuredClone(course));
      printsOf(surveyed);
      return surveyed;
    },
    printNotesOf,
  );
  const numbers = (samples: readonly number[]) => ({
    ours: percentile(samples.slice(WARM_UP), 0.5),
    anchor: percentile(cold.slice(WARM_UP), 0.5),
    anchorName: 'the survey from cold',
  });
  return [row('every hoof print', 'ms', numbers(hoofs)), row('which of them meet a pole', 'ms', numbers(notes))];
}

export async function rows(): Promise<Row[]> {
  return [...router(), ...prints()];
}
