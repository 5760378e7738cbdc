/** The kept course file of every constraint kind: read as it is, held as it lies, and held when something is dragged. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CONSTRAINT_KINDS } from '../../../src/core/constraints/constraints.ts';
import { currentLayout } from '../../../src/core/course/course.ts';
import { placedPieces } from '../../../src/core/course/resolved-constraints.ts';
import { solveLayout } from '../../../src/core/course/solve-layout.ts';
import { layoutProblem } from '../../../src/core/course/solver-problem.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';

const FOLDER = 'seeds/fixtures/constraints';

test('there is one for every kind, and none for another', () => {
  const names = CONSTRAINT_KINDS.map(({ id }) => `${id}.course.json`);
  expect(readdirSync(FOLDER).toSorted()).toEqual(names.toSorted());
});

describe.each(CONSTRAINT_KINDS.map(({ id, title }) => [id, title] as const))('%s', (id, title) => {
  const text = readFileSync(`${FOLDER}/${id}.course.json`, 'utf8');
  const reading = readCourse(text);
  if (reading.kind !== 'read') throw new Error(reading.why);
  const { course, repairs } = reading;
  const layout = currentLayout(course);

  test('is read without a mend, written the same, and uses its kind', () => {
    expect(repairs).toEqual([]);
    expect(writeCourse(course)).toBe(text);
    expect(course.title).toBe(title);
    expect(layout.constraints.map(({ kind }) => kind)).toEqual([id]);
  });

  test('holds as it lies', () => {
    const answer = solveLayout(layout, course.arena, new Map());
    expect(answer.kind === 'settled' && answer.layout).toBe(layout);
  });

  test('holds to 1e-9 when any piece of it is dragged', () => {
    for (const { key, pose } of placedPieces(layout).values()) {
      const wish = { x: pose.x + 0.7, y: pose.y + 0.4, angle: pose.angle + 0.2 };
      const answer = solveLayout(layout, course.arena, new Map([[key, wish]]));
      if (answer.kind !== 'settled') throw new Error(answer.says);
      const { problem } = layoutProblem(answer.layout, course.arena);
      const poses = new Map(problem.bodies.map((body) => [body.id, body.pose]));
      const rows = problem.constraints.flatMap((tie) =>
        tie.residuals(tie.bodies.map((body) => poses.get(body) ?? pose)),
      );
      for (const { value } of rows) expect(Math.abs(value)).toBeLessThan(1e-9);
    }
  });
});
