/**
 * Every sentence of a pattern, by kind, way and gait, on one page for a person to read. After a change that is meant:
 * `POLEWRIGHT_UPDATE=1 npx vitest run tests/sheets/sentences.test.ts`, and read the page.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import { type Course, currentLayout } from '../../src/core/course/course.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { replaceLayout } from '../../src/core/course/layouts.ts';
import type { Gait } from '../../src/core/horses/horse.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import { survey } from '../../src/core/survey.ts';
import { instructions } from '../../src/sheets/instructions.ts';

const PAGE = new URL('./sentences.txt', import.meta.url);

/** The sentence of one way at one gait, come to at a walk or in the same gait, the first time or again. */
function sentence(course: Course, ride: { passage: string; gait: Gait; approach: Gait; again: boolean }): string {
  const ridden = replaceLayout(course, (layout) => ({
    ...layout,
    ride: {
      ...layout.ride,
      legs: layout.ride.legs.flatMap((leg) => {
        const { passage, gait, approach } = ride;
        const one = { ...leg, passage, gait, approach, ...(gait === 'lope' && { lead: 'left' as const }) };
        return [leg, { ...one, id: 'second', obstacle: ride.again ? leg.obstacle : 'other' }];
      }),
    },
    obstacles: ride.again ? layout.obstacles : layout.obstacles.flatMap((each) => [each, { ...each, id: 'other' }]),
  }));
  return instructions(survey(ridden))[1]?.text ?? '';
}

function page(): string {
  const lines = OBSTACLE_KINDS.flatMap((kind) => {
    const built = buildObstacle(`${kind.id}-1`, kind.id, {}, { x: 30, y: 15, angle: 0 });
    if ('why' in built) return [];
    const course = addObstacle(blankCourse(), built);
    const [obstacle] = currentLayout(course).obstacles;
    const ways = (obstacle?.passages ?? []).flatMap((passage) => {
      const [usual = 'walk'] = passage.gaits;
      return [
        ...passage.gaits.map((gait) => sentence(course, { passage: passage.id, gait, approach: gait, again: false })),
        sentence(course, { passage: passage.id, gait: usual, approach: 'jog', again: false }),
        sentence(course, { passage: passage.id, gait: usual, approach: usual, again: true }),
      ];
    });
    return ways.length === 0 ? [] : [`# ${kind.title}`, ...new Set(ways), ''];
  });
  return lines.join('\n');
}

test('every sentence is as it was when a person last read the page', () => {
  const now = page();
  if (process.env.POLEWRIGHT_UPDATE === '1') writeFileSync(PAGE, now);
  expect(now).toBe(readFileSync(PAGE, 'utf8'));
});

test('no sentence has a word twice, a thing without its name, or an end of its list without "and"', () => {
  for (const line of page()
    .split('\n')
    .filter((each) => each !== '' && !each.startsWith('#'))) {
    expect(line).toMatch(/^[A-Z].*\.$/);
    expect(line).not.toMatch(/\b(\w+) \1\b/i);
    expect(line).not.toMatch(/\b(it|them) (bar|arms|points|of the)\b|undefined|\bto the whole,/);
    expect(line).not.toMatch(/\b(walk|jog)[^,;.]* lead\b/i);
  }
});
