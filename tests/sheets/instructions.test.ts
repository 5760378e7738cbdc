import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course, Leg } from '../../src/core/course/course.ts';
import { addObstacle, flipObstacles } from '../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../src/core/course/edit-ride.ts';
import { replaceLayout } from '../../src/core/course/layouts.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import { survey } from '../../src/core/survey.ts';
import { instructions } from '../../src/sheets/instructions.ts';
import { ended, SAMPLES } from './samples.ts';

type Change = Partial<Pick<Leg, 'passage' | 'gait' | 'approach' | 'lead' | 'words'>>;

/** A course with one obstacle of a kind, ridden in one way. */
function courseWith(kind: string, change: Change): Course {
  const obstacle = buildObstacle(`${kind}-1`, kind, {}, { x: 30, y: 15, angle: 0 });
  if (!('pieces' in obstacle)) throw new Error(obstacle.why);
  const course = addObstacle(blankCourse(), obstacle);
  const [leg] = course.layouts[0].ride.legs;
  if (leg === undefined) throw new Error(`${kind} has no passage`);
  return changeLeg(course, leg.id, change);
}

function firstOf(course: Course): string | undefined {
  return instructions(survey(course))[0]?.text;
}

const SAID: readonly (readonly [string, Change, string])[] = [
  ['run', { approach: 'jog', gait: 'jog' }, 'From START, jog to and over the poles.'],
  ['run', { approach: 'walk', gait: 'jog' }, 'From START, walk to the poles, then jog over them.'],
  ['run', { approach: 'jog', gait: 'jog', passage: 'return' }, 'From START, jog to and over the poles.'],
  [
    'fan',
    { approach: 'lope', gait: 'lope', lead: 'left', passage: 'left' },
    'From START, lope on the left lead to and over the fan, turning left.',
  ],
  ['bridge', { approach: 'jog', gait: 'walk' }, 'From START, jog to the bridge, then walk over it.'],
  ['spoke', { approach: 'jog', gait: 'jog', passage: 'right' }, 'From START, jog around the spoke to the right.'],
  [
    'box',
    { approach: 'jog', gait: 'walk' },
    'From START, jog to the box, then walk into it, turn 360° to the left, and walk straight on out.',
  ],
  [
    'back-l',
    { approach: 'jog', gait: 'walk', passage: 'turn-and-back' },
    'From START, jog to the L, stop, turn 180° to the left, and back through it.',
  ],
  ['side-pass', { approach: 'walk', gait: 'walk' }, 'From START, walk to the pole, stop, and side pass left over it.'],
  [
    'gate',
    { approach: 'walk', gait: 'walk' },
    'From START, walk to the gate, stop, and work it with a left-hand push.',
  ],
  [
    'mailbox',
    { approach: 'walk', gait: 'walk' },
    'From START, walk to the mailbox, halt with it on the left, open it, take out the mail and show it, put it back, and close it.',
  ],
  [
    'serpentine',
    { approach: 'jog', gait: 'jog' },
    'From START, jog to the markers and through A to D in a serpentine, starting with A on your right.',
  ],
];

describe('the pattern in words', () => {
  test.each(SAID)('a %s ridden as %j is told plainly', (kind, change, text) => {
    expect(firstOf(courseWith(kind, change))).toBe(text);
  });

  test('the mirror image of an obstacle is told with the other hand', () => {
    const course = courseWith('box', { approach: 'walk', gait: 'walk' });
    expect(firstOf(course)).toContain('360° to the left');
    expect(firstOf(flipObstacles(course, ['box-1']))).toContain('360° to the right');
  });

  test('the designer’s own words stand as they are, and blank ones do not count', () => {
    expect(firstOf(courseWith('run', { words: '  Trot the poles, please. ' }))).toBe('Trot the poles, please.');
    expect(firstOf(courseWith('run', { words: '  ' }))).toMatch(/^From START/);
  });

  test('the end of an obstacle is named only when it is ridden again', () => {
    const course = courseWith('run', { passage: 'forward', approach: 'jog', gait: 'jog' });
    const [leg] = course.layouts[0].ride.legs as readonly [Leg];
    const again = replaceLayout(course, (layout) => ({
      ...layout,
      ride: { ...layout.ride, legs: [leg, { ...leg, id: 'leg-again', passage: 'return' }] },
    }));
    expect(instructions(survey(again)).map(({ text }) => text)).toEqual([
      'From START, jog to and over the poles.',
      'Jog to and over the poles from the other end.',
    ]);
  });

  test('the way to an END mark is told with the last number, and only where there is one', () => {
    const course = SAMPLES['100 x 200 ft'] as Course;
    expect(instructions(survey(ended(course))).at(-1)?.text).toMatch(/ Then walk to END\.$/);
    expect(instructions(survey(course)).at(-1)?.text).not.toContain('END');
  });

  test('numbers follow the go from 1', () => {
    const course = SAMPLES['100 x 200 ft'] as Course;
    const told = instructions(survey(course));
    expect(told.map(({ number }) => number)).toEqual(course.layouts[0].ride.legs.map((_, index) => index + 1));
    expect(told.map(({ leg }) => leg)).toEqual(course.layouts[0].ride.legs.map(({ id }) => id));
  });

  const passages = OBSTACLE_KINDS.flatMap((kind) => {
    const obstacle = buildObstacle(`${kind.id}-1`, kind.id, {}, { x: 30, y: 15, angle: 0 });
    return 'pieces' in obstacle ? obstacle.passages.map((passage) => [kind.id, passage.id, passage] as const) : [];
  });

  test.each(passages)('%s, %s is one sentence that begins with the gait', (kind, id, passage) => {
    for (const gait of passage.gaits) {
      for (const approach of ['walk', 'jog', 'lope'] as const) {
        const text = firstOf(courseWith(kind, { passage: id, gait, approach })) ?? '';
        expect(text).toMatch(new RegExp(`^From START, ${approach}\\b.*\\.$`));
        expect(text).not.toMatch(/ {2}|undefined|\.\.|other end|far side/);
        if (gait !== approach && !/stop|halt/.test(text)) expect(text).toContain(gait);
      }
    }
  });
});
