/** A way keeps its room from the pieces of its own two obstacles too, once the horse is off them. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { poseAt } from '../../../src/core/plane/path.ts';
import { ringPointDistance } from '../../../src/core/plane/segment.ts';
import { pieceClearance } from '../../../src/core/ride/clearance.ts';
import { type Survey, survey } from '../../../src/core/survey.ts';
import { STARTERS } from './courses.ts';

const STEP = 0.02;
const FIXTURES = 'seeds/fixtures/obstacles';

function fixture(name: string): Course {
  const reading = readCourse(readFileSync(`${FIXTURES}/${name}`, 'utf8'));
  if (reading.kind !== 'read') throw new Error(`${name} is refused: ${reading.why}`);
  return reading.course;
}

const COURSES = [...STARTERS, ...readdirSync(FIXTURES).map((name): readonly [string, Course] => [name, fixture(name)])];

/** The nearest that a way comes to a piece, less the room it wants; beyond a horse's length from its end. */
function missing({ line, obstacles, layout, horse }: Survey): string[] {
  const blocked = new Set(line.breaks.map(({ leg }) => leg));
  return line.elements.flatMap(({ part, leg, path, length }) => {
    const ends = [
      { id: layout.ride.legs[part === 'approach' ? leg - 1 : leg]?.obstacle, first: horse.bodyLength.value, last: 0 },
      { id: part === 'approach' ? layout.ride.legs[leg]?.obstacle : undefined, first: 0, last: horse.bodyLength.value },
    ];
    if (part === 'obstacle' || blocked.has(leg)) return [];
    return ends.flatMap(({ id, first, last }) => {
      const pieces = obstacles.find(({ obstacle }) => obstacle.id === id)?.pieces ?? [];
      return pieces.flatMap((piece): string[] => {
        let least = Number.POSITIVE_INFINITY;
        for (let at = first; at < length - last; at += STEP) {
          least = Math.min(least, ringPointDistance(piece.footprint, poseAt(path, at)));
        }
        return least >= pieceClearance(piece) - 1e-6
          ? []
          : [`number ${leg + 1}: ${piece.key} at ${least.toFixed(3)} m`];
      });
    });
  });
}

describe('beyond a horse’s length from its end', () => {
  test.each(COURSES)('the ways of %s keep clear of their own obstacles', (_, course) => {
    expect(missing(survey(course))).toEqual([]);
  });
});

test('a horse that has backed out where its way is shut turns on the spot before it goes on', () => {
  const open = STARTERS.find(([name]) => name === 'larkhollow-open.course.json')?.[1];
  if (open === undefined) throw new Error('the starter is not there');
  const { line } = survey(open);
  const leg = currentLayout(open).ride.legs.findIndex(({ obstacle }) => obstacle === 'back-l-1') + 1;
  const turns = line.elements.filter((each) => each.move === 'turn' && each.part === 'approach');
  expect(turns.map((each) => each.leg)).toEqual([leg]);
  expect(line.breaks).toEqual([]);
});
