/** Courses in which something that was called kept or impossible was not so: seeds/found, one file a case. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { solveLayout } from '../../../src/core/course/solve-layout.ts';
import { layoutProblem } from '../../../src/core/course/solver-problem.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { INCH } from '../../../src/core/measure/quantity.ts';
import { canBeMet } from '../../bench/truth/brute-force.ts';
import { tapedOnGround } from '../../bench/truth/nets.ts';

const FOUND = readdirSync('seeds/found').map((name): readonly [string, Course] => {
  const reading = readCourse(readFileSync(`seeds/found/${name}`, 'utf8'));
  if (reading.kind === 'refused') throw new Error(reading.why);
  return [name, reading.course];
});

describe.each(FOUND)('%s', (_, course) => {
  const layout = currentLayout(course);

  test('what is called settled is so by the tape, wherever its last pole is dragged', () => {
    const dragged = layout.obstacles.flatMap((each) => placedObstacle(each).pieces).at(-1);
    if (dragged === undefined) throw new Error('no pole');
    for (let step = 4; step <= 240; step += 4) {
      const target = { ...dragged.pose, x: dragged.pose.x - step * INCH * 0.7, y: dragged.pose.y + step * INCH * 0.7 };
      const outcome = solveLayout(layout, course.arena, new Map([[dragged.key, target]]));
      if (outcome.kind !== 'settled') continue;
      for (const gap of layout.constraints.filter(({ kind }) => kind === 'gap')) {
        expect(Math.abs(tapedOnGround(outcome.layout, gap) - (gap.hold ?? 0))).toBeLessThan(1e-6);
      }
    }
  });

  test('what is called impossible is so by brute force', () => {
    const outcome = solveLayout(layout, course.arena, new Map());
    if (outcome.kind !== 'conflict') return expect(outcome.kind).toBe('settled');
    const { problem } = layoutProblem(layout, course.arena);
    for (const { members } of outcome.conflicts) {
      const named = problem.constraints.filter(({ id }) => members.some(({ key }) => key === id));
      expect(canBeMet(problem, named, 54)).toBe(false);
    }
  });
});
