import { CHECKS, findingsOf } from '../../src/core/checks/checks.ts';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { added, shifted } from '../../src/core/course/edit-obstacles.ts';
import { made } from '../../src/core/obstacles/made.ts';
import { survey } from '../../src/core/survey.ts';
import { percentile, type Row, row } from './row.ts';

const KINDS = ['run', 'fan', 'spoke', 'box', 'back-l', 'side-pass', 'gate', 'bridge', 'serpentine', 'run'];
const MOVES = 300;

function tenObstacles(): Course {
  return KINDS.reduce((course, kind, i) => {
    const pose = { x: 7 + 11 * (i % 5), y: 7 + 15 * Math.floor(i / 5), angle: 0 };
    const obstacle = made(`${kind}-${i}`, kind, {}, pose);
    if ('why' in obstacle) throw new Error(obstacle.why);
    return added(course, obstacle);
  }, blankCourse());
}

/** Milliseconds of the checks alone after one obstacle moved by some centimetres: its survey is made outside the clock. */
function moved(start: Course): number[] {
  let course = start;
  findingsOf(survey(course));
  const times = Array.from({ length: MOVES }, (_, i) => {
    course = shifted(course, ['fan-1'], 0.02 * Math.cos(i / 9), 0.02 * Math.sin(i / 9));
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
    const found = findingsOf(survey(shifted(start, ['fan-1'], 0.01 * (i + 1), 0)));
    const from = performance.now();
    for (const finding of found) void finding.remedies.length;
    return performance.now() - from;
  }).slice(2);
}

/** All checks on a course of ten obstacles after one moved, and trying all their fixes. */
export async function rows(): Promise<Row[]> {
  const course = tenObstacles();
  const times = moved(course);
  const budget = { anchor: 2, anchorName: 'budget of the checks in one pointer move' };
  const p50 = percentile(times, 0.5);
  return [
    row(`${CHECKS.length} checks after one obstacle moved, p50`, 'ms', { ours: p50, ...budget }),
    row(`${CHECKS.length} checks after one obstacle moved, p95`, 'ms', { ours: percentile(times, 0.95), ...budget }),
    row('courses checked in one second', '1/s', {
      ours: 1000 / p50,
      anchor: 60,
      anchorName: 'frames of a 60 Hz screen',
    }),
    row('all fixes of all findings tried, p50', 'ms', {
      ours: percentile(fixed(course), 0.5),
      anchor: 100,
      anchorName: 'what a person takes for at once (estimate)',
    }),
  ];
}
