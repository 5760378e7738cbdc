import { expect, test } from 'vitest';
import { distance } from '../../../../src/core/plane/point.ts';
import { setOutOf } from '../../../../src/core/setout/plan-setout.ts';
import { tapeLine } from '../../../../src/core/setout/words/tape-lines.ts';
import { survey } from '../../../../src/core/survey.ts';
import { STARTERS } from '../../ride/courses.ts';

test.each(STARTERS)('a tape of %s is as long as what it reads', (_, course) => {
  const of = survey(course);
  const ground = { arena: course.arena, pieces: new Map(of.pieces.map((piece) => [piece.key, piece])) };
  const steps = setOutOf(of).parts.flatMap((part) => part.steps);
  let taped = 0;
  for (const observation of steps.flatMap(({ observations, checks }) => [...observations, ...checks])) {
    const { tape, guide } = tapeLine(ground, observation);
    if (tape === undefined) {
      // Nothing is read where things are brought together, level, in line or square.
      expect(Math.abs(observation.exact), observation.kind).toBeLessThan(1e-3);
      expect(guide !== undefined || observation.kind === 'against').toBe(true);
      continue;
    }
    taped += 1;
    expect(distance(...tape), observation.kind).toBeCloseTo(Math.abs(observation.exact), 6);
  }
  expect(taped).toBeGreaterThan(steps.length);
});
