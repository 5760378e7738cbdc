import { CHECKS, findingsOf } from '../../src/core/checks/checks.ts';
import { sweepsOf } from '../../src/core/checks/geometry/sweep.ts';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { addObstacle, shiftByKeys } from '../../src/core/course/edit-obstacles.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import { survey } from '../../src/core/survey.ts';
import { planted, randomCourse } from '../core/checks/planted.ts';
import { longestRound, narrowestLane, ROWS, SCALE } from '../published/corner.ts';
import { percentile, type Row, row } from './row.ts';

const KINDS = ['run', 'fan', 'spoke', 'box', 'back-l', 'side-pass', 'gate', 'bridge', 'serpentine', 'run'];
const MOVES = 300;

function tenObstacles(): Course {
  return KINDS.reduce((course, kind, i) => {
    const pose = { x: 7 + 11 * (i % 5), y: 7 + 15 * Math.floor(i / 5), angle: 0 };
    const obstacle = buildObstacle(`${kind}-${i}`, kind, {}, pose);
    if ('why' in obstacle) throw new Error(obstacle.why);
    return addObstacle(course, obstacle);
  }, blankCourse());
}

/** Milliseconds of the checks alone after one obstacle moved by some centimetres: its survey is made outside the clock. */
function moved(start: Course): number[] {
  let course = start;
  findingsOf(survey(course));
  const times = Array.from({ length: MOVES }, (_, i) => {
    course = shiftByKeys(course, ['fan-1'], 0.02 * Math.cos(i / 9), 0.02 * Math.sin(i / 9));
    const found = survey(course);
    const from = performance.now();
    findingsOf(found);
    return performance.now() - from;
  });
  return times.slice(50);
}

/** Milliseconds until every fix on offer has been tried. */
function fixed(start: Course): number[] {
  return Array.from({ length: 12 }, (_, i) => {
    const found = findingsOf(survey(shiftByKeys(start, ['fan-1'], 0.01 * (i + 1), 0)));
    const from = performance.now();
    for (const finding of found) void finding.remedies.length;
    return performance.now() - from;
  }).slice(2);
}

/** Every fix of the planted faults, and what became of them. */
function mended() {
  let [faults, fixable, fixed] = [0, 0, 0];
  const times: number[] = [];
  for (let seed = 0; seed < 300; seed += 3) {
    const { plant, right, wrong } = planted(seed);
    const known = new Set(findingsOf(survey(right)).map(({ id }) => id));
    const fresh = findingsOf(survey(wrong)).filter(({ id, check }) => check === plant.check && !known.has(id));
    faults += fresh.length;
    // Nothing on the ground is wrong with a short truck, a large class or a name: a person has to see to those.
    if (!BY_HAND.has(plant.check)) fixable += fresh.length;
    const from = performance.now();
    const mends = fresh.filter(({ remedies }) => remedies.length > 0).length;
    times.push(performance.now() - from);
    fixed += mends;
  }
  return { faults, fixable, fixed, times };
}

const BY_HAND = new Set(['truck', 'class-size', 'forbidden', 'level']);

/** Milliseconds for surveys and all checks of courses that were never seen before. */
function unseen(): number[] {
  return Array.from({ length: 60 }, (_, i) => {
    const course = randomCourse(1000 + i);
    const from = performance.now();
    findingsOf(survey(course));
    return performance.now() - from;
  }).slice(10);
}

/** Milliseconds of one whole sweep round an L, its pieces being new each time. */
function swept(): number[] {
  return Array.from({ length: 60 }, (_, i) => {
    const obstacle = buildObstacle('back-l', 'back-l', { width: 0.8 + i / 1000 }, { x: 30, y: 20, angle: 0 });
    if ('why' in obstacle) throw new Error(obstacle.why);
    const found = survey(addObstacle(blankCourse(), obstacle));
    const from = performance.now();
    sweepsOf(found);
    return performance.now() - from;
  }).slice(10);
}

/** All checks on a course of ten obstacles after one moved, and trying all their fixes. */
/** The sweep beside the closed form of a right-angled corner: 2√2·a = L + 2w for the narrowest lane. */
function corners(): Row[] {
  const bases = [
    { length: 1.524, width: 0.33 },
    { length: 1.25, width: 0.35 },
  ];
  const off = ROWS.map(({ a, b, w, longest }) => {
    const found = longestRound([a * SCALE, b * SCALE], w * SCALE, 1.5 * longest * SCALE);
    return 100 * Math.abs(found / (longest * SCALE) - 1);
  });
  return [
    ...bases.map(({ length, width }) =>
      row(`narrowest L for a hoof base of ${length} x ${width} m`, 'in', {
        ours: narrowestLane({ length, width }) / 0.0254,
        anchor: (length + 2 * width) / (2 * Math.SQRT2) / 0.0254,
        anchorName: 'closed form',
      }),
    ),
    row('the worst of the published corners is off by', '%', {
      ours: Math.max(...off),
      anchor: 1,
      anchorName: 'allowed',
    }),
  ];
}

export async function rows(): Promise<Row[]> {
  const course = tenObstacles();
  const times = moved(course);
  const budget = { anchor: 1, anchorName: 'budget of the checks in one pointer move' };
  const p50 = percentile(times, 0.5);
  const { faults, fixable, fixed: mends, times: trying } = mended();
  const fresh = percentile(unseen(), 0.5);
  return [
    row(`${CHECKS.length} checks after one obstacle moved, p50`, 'ms', { ours: p50, ...budget }),
    row(`${CHECKS.length} checks after one obstacle moved, p95`, 'ms', { ours: percentile(times, 0.95), ...budget }),
    row('courses checked in one second, one obstacle moved', '1/s', {
      ours: 1000 / p50,
      anchor: 60,
      anchorName: 'frames of a 60 Hz screen',
    }),
    row('courses never seen before, surveyed and checked in one second', '1/s', {
      ours: 1000 / fresh,
      anchor: 10,
      anchorName: 'a folder of 600 courses in a minute (estimate)',
    }),
    row('hooves swept round a new L, p50', 'ms', {
      ours: percentile(swept(), 0.5),
      anchor: 16.7,
      anchorName: 'one frame of a 60 Hz screen',
    }),
    ...corners(),
    row('share of all planted faults that a fix mends', '%', {
      ours: (100 * mends) / faults,
      anchor: 100,
      anchorName: 'every fault',
    }),
    row('share of those that lie on the ground', '%', {
      ours: (100 * mends) / fixable,
      anchor: 100,
      anchorName: 'every fault that an edit of the ground can mend',
    }),
    row('fixes of one planted fault tried, p50', 'ms', {
      ours: percentile(trying, 0.5),
      anchor: 100,
      anchorName: 'what a person takes for at once (estimate)',
    }),
    row('all fixes of all findings tried, p50', 'ms', {
      ours: percentile(fixed(course), 0.5),
      anchor: 100,
      anchorName: 'what a person takes for at once (estimate)',
    }),
  ];
}
