/** The ways of every starter and of 50 random courses: as they are ridden, and ridden best. */
import type { Course } from '../../src/core/course/course.ts';
import { takeWays } from '../../src/core/course/edit-ride.ts';
import { type BestWays, bestWays } from '../../src/core/ride/best-ways.ts';
import { type Survey, survey } from '../../src/core/survey.ts';
import { RANDOM_COURSES, STARTERS } from '../core/ride/courses.ts';
import { percentile, type Row, row } from './row.ts';

const RANDOM = RANDOM_COURSES.slice(0, 50);
const ROUNDS = 5;

interface Ridden {
  readonly before: Survey;
  readonly after: Survey;
  readonly found: BestWays;
  /** Milliseconds for the ways of a course that is surveyed already, and for the survey from cold. */
  readonly ways: number;
  readonly cold: number;
}

function clocked<T>(run: () => T): { readonly made: T; readonly ms: number } {
  const begun = performance.now();
  const made = run();
  return { made, ms: performance.now() - begun };
}

/** Nothing is known of a copy: every round sets out from cold. */
function ridden(course: Course): Ridden {
  const rounds = Array.from({ length: ROUNDS }, () => {
    const copy = structuredClone(course);
    const { made: before, ms: cold } = clocked(() => survey(copy));
    const { made: found, ms: ways } = clocked(() => bestWays({ ...before, arena: copy.arena }));
    return { before, found, ways, cold };
  });
  const [first] = rounds;
  if (first === undefined) throw new Error('ways: there are no rounds');
  const { before, found } = first;
  const better = takeWays(before.course, found.groups.flat());
  const median = (of: 'ways' | 'cold') =>
    percentile(
      rounds.map((each) => each[of]),
      0.5,
    );
  return { before, after: survey(better), found, ways: median('ways'), cold: median('cold') };
}

function rowsOf(name: string, all: readonly Ridden[]): Row[] {
  const sum = (value: (of: Ridden) => number) => all.reduce((total, each) => total + value(each), 0);
  return [
    row(`${name}: the line`, 'm', {
      ours: sum(({ after }) => after.line.length),
      anchor: sum(({ before }) => before.line.length),
      anchorName: 'as it is ridden',
    }),
    row(`${name}: the go`, 's', {
      ours: sum(({ after }) => after.line.clock.go),
      anchor: sum(({ before }) => before.line.clock.go),
      anchorName: 'as it is ridden',
    }),
    row(`${name}: to work it out`, 'ms', {
      ours: sum(({ ways }) => ways),
      anchor: sum(({ cold }) => cold),
      anchorName: 'the survey from cold',
    }),
    row(`${name}: ways sought`, '', {
      ours: sum(({ found }) => found.sought),
      anchor: sum(({ found }) => found.edges),
      anchorName: 'every way there is',
    }),
  ];
}

export async function rows(): Promise<Row[]> {
  const random = RANDOM.map(ridden);
  const slowest = random.toSorted((a, b) => b.ways - a.ways).slice(0, 1);
  return [
    ...STARTERS.flatMap(([name, course]) => rowsOf(name.replace('.course.json', ''), [ridden(course)])),
    ...rowsOf(`${RANDOM.length} random courses`, random),
    ...rowsOf('the slowest of them', slowest),
  ];
}
