/**
 * Every sentence of a pattern, by kind, way and gait, on one page for a person to read. After a change that is meant:
 * `POLEWRIGHT_UPDATE=1 npx vitest run tests/sheets/sentences.test.ts`, and read the page.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { replaceLayout } from '../../src/core/course/layouts.ts';
import type { Gait } from '../../src/core/horses/horse.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import type { Obstacle, ObstacleKind } from '../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import { swappedHands } from '../../src/core/obstacles/wording.ts';
import type { Values } from '../../src/core/pieces/params.ts';
import { survey } from '../../src/core/survey.ts';
import { instructions } from '../../src/sheets/instructions.ts';
import { STARTERS } from '../core/ride/courses.ts';

const PAGE = new URL('./sentences.txt', import.meta.url);
const STARTER_PAGE = new URL('./starter-sentences.txt', import.meta.url);

/** The sentence of one way at one gait, come to in another or the same, the first time or again. */
function sentence(course: Course, ride: { passage: string; gait: Gait; approach: Gait; again: boolean }): string {
  const ridden = replaceLayout(course, (layout) => ({
    ...layout,
    ride: {
      ...layout.ride,
      legs: layout.ride.legs.flatMap((leg) => {
        const { passage, gait, approach } = ride;
        const one = { ...leg, passage, gait, approach, ...(gait === 'lope' && { lead: 'left' as const }) };
        return [
          { ...leg, id: 'first', obstacle: ride.again ? leg.obstacle : 'elsewhere' },
          { ...one, id: 'second' },
        ];
      }),
    },
  }));
  return instructions(survey(ridden))[1]?.text ?? '';
}

/** Every sentence of a built obstacle, each once. */
function sentencesOf(built: Obstacle): readonly string[] {
  const course = addObstacle(blankCourse(), built);
  return built.passages.flatMap((passage) => {
    const [usual = 'walk'] = passage.gaits;
    return [
      ...passage.gaits.flatMap((gait) =>
        // The lead of a lope towards it is the line's, and other tests have that.
        [...new Set<Gait>([gait, 'walk', 'jog'])].map((approach) =>
          sentence(course, { passage: passage.id, gait, approach, again: false }),
        ),
      ),
      sentence(course, { passage: passage.id, gait: usual, approach: usual, again: true }),
    ];
  });
}

/** The usual values of a kind, then each other choice that it leaves, and each count at its least. */
function variants({ params }: ObstacleKind): readonly (readonly [string, Values])[] {
  const others = Object.entries(params).flatMap(([key, param]): (readonly [string, Values])[] => {
    if (param.kind === 'count') return [[`, ${param.label.toLowerCase()}: ${param.least}`, { [key]: param.least }]];
    if (param.kind !== 'choice' || key === 'gait') return [];
    const choices = Object.entries(param.options).filter(([choice]) => choice !== param.usual);
    return choices.map(([choice, label]) => [`, ${label.toLowerCase()}`, { [key]: choice }]);
  });
  return [['', {}], ...others];
}

function page(): string {
  const lines = OBSTACLE_KINDS.flatMap((kind) => {
    const told = new Set<string>();
    return variants(kind).flatMap(([which, values]) => {
      const built = buildObstacle(`${kind.id}-1`, kind.id, values, { x: 30, y: 15, angle: 0 });
      const ways = 'why' in built ? [] : [...new Set(sentencesOf(built))].filter((each) => !told.has(each));
      for (const each of ways) told.add(each);
      return ways.length === 0 ? [] : [`# ${kind.title}${which}`, ...ways, ''];
    });
  });
  return lines.join('\n');
}

/** The starters as they are stored: their stations are those of the kinds when they were made. */
function starterPage(): string {
  return STARTERS.map(([name, course]) => {
    const told = instructions(survey(course)).map(({ number, text }) => `${number}. ${text}`);
    return [`# ${name}`, ...told, ''].join('\n');
  }).join('\n');
}

const PAGE_NOW = page();

test('every sentence of the starters is as it was when a person last read them', () => {
  const now = starterPage();
  if (process.env.POLEWRIGHT_UPDATE === '1') writeFileSync(STARTER_PAGE, now);
  expect(now).toBe(readFileSync(STARTER_PAGE, 'utf8'));
});

test('every sentence is as it was when a person last read the page', () => {
  if (process.env.POLEWRIGHT_UPDATE === '1') writeFileSync(PAGE, PAGE_NOW);
  expect(PAGE_NOW).toBe(readFileSync(PAGE, 'utf8'));
});

test('no sentence has a word twice, a thing without its name, or an end of its list without "and"', () => {
  for (const line of PAGE_NOW.split('\n').filter((each) => each !== '' && !each.startsWith('#'))) {
    expect(line).toMatch(/^[A-Z].*\.$/);
    expect(line).not.toMatch(/\b(\w+) \1\b/i);
    expect(line).not.toMatch(/\b(it|them) (bar|arms|points|of the)\b|undefined|\bto the whole,/);
    expect(line).not.toMatch(/\b(walk|jog)[^,;.]* lead\b/i);
  }
});

test.each(OBSTACLE_KINDS.map(({ id }) => id))('the mirror image of a %s is told with the other hands', (id) => {
  const built = ([1, -1] as const).map((side) => buildObstacle('it', id, {}, { x: 30, y: 15, angle: 0.3 }, side));
  const [told, mirrored] = built.map((each) => ('why' in each ? [] : sentencesOf(each)));
  // The lead is chosen, and stays.
  const swapped = told?.map((each) => swappedHands(each).replaceAll('right lead', 'left lead'));
  expect(mirrored).toEqual(swapped);
});
