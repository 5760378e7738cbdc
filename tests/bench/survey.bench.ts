/** The survey after one obstacle of ten has moved, against the same survey from cold. */
import { readdirSync, readFileSync } from 'node:fs';
import { type Course, currentLayout } from '../../src/core/course/course.ts';
import { replaceLayout } from '../../src/core/course/layouts.ts';
import { readCourse } from '../../src/core/files/read.ts';
import { FOOT } from '../../src/core/measure/quantity.ts';
import { pose } from '../../src/core/plane/pose.ts';
import { survey } from '../../src/core/survey.ts';
import { printsOf, recount } from '../../src/core/survey-prints.ts';
import { course, fan, leg, run } from '../core/ride/hand-laid.ts';
import { percentile, type Row, row, timed } from './row.ts';

const SEEDS = new URL('../../seeds/starters/', import.meta.url);
const ROUNDS = 400;
/** Rounds before the clock counts, so that both sides run compiled. */
const WARM_UP = 50;

/** Ten obstacles, forty poles, in a ring of 150 × 300 ft. */
function tenObstacles(): Course {
  const obstacles = [
    run('run-1', pose(15, 6, 0), { poles: 4 }),
    fan('fan-1', pose(35, 10, 0), { poles: 4, radius: 3.4 }),
    run('run-2', pose(60, 6, 0), { poles: 5, gap: 22 * 0.0254 }),
    fan('fan-2', pose(80, 12, 0), { poles: 3, radius: 3.6 }),
    run('run-3', pose(78, 36, Math.PI / 2), { poles: 4, gap: 6 * FOOT }),
    fan('fan-3', pose(60, 34, Math.PI / 2), { poles: 4, radius: 3.2 }),
    run('run-4', pose(45, 22, Math.PI), { poles: 4, gap: 6 * FOOT }),
    fan('fan-4', pose(32, 32, 1), { poles: 5, radius: 3.8, angle: 0.5 }),
    run('run-5', pose(20, 22, Math.PI), { poles: 4 }),
    fan('fan-5', pose(12, 36, 2), { poles: 4, radius: 3.2 }),
  ];
  const legs = obstacles.map(({ id }) => leg(id));
  const arena = { title: 'Large', length: 300 * FOOT, width: 150 * FOOT } as const;
  return course(obstacles, { start: pose(3, 6, 0), legs }, { ...arena, entrance: { wall: 'west', at: 6, width: 4 } });
}

function nudged(before: Course, which: number, by: number): Course {
  return replaceLayout(before, (layout) => ({
    ...layout,
    obstacles: layout.obstacles.map((each, i) =>
      i === which ? { ...each, pose: { ...each.pose, x: each.pose.x + by } } : each,
    ),
  }));
}

/** The seed with the most pieces; absent while there are none. */
function largestSeed(): Course | undefined {
  const courses = readdirSync(SEEDS)
    .filter((name) => name.endsWith('.course.json'))
    .flatMap((name) => {
      const reading = readCourse(readFileSync(new URL(name, SEEDS), 'utf8'));
      return reading.kind === 'read' ? [reading.course] : [];
    });
  return courses.sort((a, b) => survey(b).pieces.length - survey(a).pieces.length)[0];
}

/** What one drag works out anew, of all that there is: the mean over each obstacle moved once. */
function counts(name: string, of: Course): Row[] {
  const moved = currentLayout(of).obstacles.map((_, i) => {
    // A copy, as it was before anything was dragged.
    const copy = structuredClone(of);
    const before = survey(copy);
    printsOf(before);
    return recount(before, survey(nudged(copy, i, 0.05)));
  });
  const kinds = ['obstacles', 'ways', 'passages', 'gaps', 'prints'] as const;
  return kinds.map((kind) =>
    row(`${name}, ${kind} worked out anew when one obstacle moves`, 'mean', {
      ours: moved.reduce((sum, each) => sum + each[kind].anew, 0) / moved.length,
      anchor: moved[0]?.[kind].all ?? Number.NaN,
      anchorName: 'all of them',
    }),
  );
}

function measured(name: string, of: Course): Row[] {
  // A copy shares nothing with what is remembered.
  const cold = timed(WARM_UP + ROUNDS, () => structuredClone(of), survey);
  const count = currentLayout(of).obstacles.length;
  let now = of;
  survey(now);
  const warm = timed(
    WARM_UP + ROUNDS,
    (i) => {
      now = nudged(now, i % count, 0.05 * Math.sin(i));
      return now;
    },
    survey,
  );
  const anchorName = 'from cold';
  return [0.5, 0.95].map((share) =>
    row(`${name}, one of ${count} obstacles moved, p${share * 100}`, 'ms', {
      ours: percentile(warm.slice(WARM_UP), share),
      anchor: percentile(cold.slice(WARM_UP), share),
      anchorName,
    }),
  );
}

export async function rows(): Promise<Row[]> {
  const seed = largestSeed();
  const courses = [['made', tenObstacles()] as const, ...(seed === undefined ? [] : [[seed.title, seed] as const])];
  return [...courses.flatMap(([name, of]) => measured(name, of)), ...courses.flatMap(([name, of]) => counts(name, of))];
}
