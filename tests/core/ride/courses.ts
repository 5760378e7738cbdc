/** All starter courses, and random ones ridden in random gaits; for laws that hold on any course. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import type { Course } from '../../../src/core/course/course.ts';
import { changeLeg } from '../../../src/core/course/edit-ride.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { drawn, randomCourse } from '../checks/planted.ts';

function starter(name: string): Course {
  const read = readCourse(readFileSync(`seeds/starters/${name}`, 'utf8'));
  if (read.kind === 'refused') throw new Error(`${name}: ${read.why}`);
  return read.course;
}

/** With their file names. */
export const STARTERS: readonly (readonly [string, Course])[] = readdirSync('seeds/starters')
  .filter((name) => name.endsWith('.course.json'))
  .map((name) => [name, starter(name)]);

const GAITS = ['walk', 'jog', 'lope'] as const;

/** Each leg and each way in any gait, on a chosen lead, another or none; every third course has a chosen change of lead. */
function inAnyGait(course: Course, seed: number): Course {
  const roll = drawn(seed + 7000);
  const one = <T>(of: readonly T[]): T => of[Math.floor(roll() * of.length)] as T;
  const legs = course.layouts[0].ride.legs;
  const ridden = legs.reduce((now, leg) => {
    const { obstacles } = now.layouts[0];
    const obstacle = obstacles.find(({ id }) => id === leg.obstacle);
    const ways = obstacle?.passages ?? [];
    const passage = ways.length === 0 ? undefined : one(ways);
    const gait = one(passage?.gaits ?? GAITS);
    const lead = one(['left', 'right', undefined] as const);
    return changeLeg(now, leg.id, {
      ...{ gait, approach: one(GAITS) },
      ...(passage === undefined ? {} : { passage: passage.id }),
      ...(lead === undefined ? {} : { lead }),
    });
  }, course);
  const how = one(['simple', 'flying', undefined] as const);
  return how === undefined ? ridden : { ...ridden, class: { ...ridden.class, leadChange: how } };
}

/** The run's seed moves all of them, so that `POLEWRIGHT_SEED` draws others. */
const FIRST = Math.abs(fc.readConfigureGlobal().seed ?? 0) % 100_000;

/** A hundred, the same in every run of one seed. */
export const RANDOM_COURSES: readonly Course[] = Array.from({ length: 100 }, (_, i) =>
  inAnyGait(randomCourse(FIRST + i), FIRST + i),
);
