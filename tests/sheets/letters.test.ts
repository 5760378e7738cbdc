import { expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import type { Values } from '../../src/core/pieces/params.ts';
import { distance } from '../../src/core/plane/point.ts';
import { boundsIntersect } from '../../src/core/plane/ring.ts';
import { survey } from '../../src/core/survey.ts';
import { drawing } from '../../src/sheets/drawing.ts';
import { backingRadius, type WordsMark, wordsBounds } from '../../src/sheets/lettering.ts';
import { onPaper } from '../../src/sheets/paper-transform.ts';
import { STARTERS } from '../core/ride/courses.ts';

function courseOf(stands: readonly (readonly [kind: string, x: number, y: number, values?: Values])[]): Course {
  return stands.reduce<Course>((course, [kind, x, y, values = {}], i) => {
    const built = buildObstacle(`it-${i}`, kind, values, { x, y, angle: i });
    if ('why' in built) throw new Error(built.why);
    return addObstacle(course, built);
  }, blankCourse());
}

const CROWDED = courseOf([
  ['back-markers', 12, 12],
  ['back-markers', 22, 13, { shape: 'row' }],
  ['serpentine', 35, 12, { markers: 6 }],
  ['square-marker', 35, 22],
  ['run', 14, 22],
]);

const CASES = [['crowded', CROWDED] as const, ...STARTERS.map(([name, course]) => [name, course] as const)].flatMap(
  ([name, course]) => [200, 400].map((scale) => [name, scale, course] as const),
);

test.each(CASES)(
  'in %s at 1:%i each letter stands clear of all other words, and is read with its own marker',
  (_, scale, course) => {
    const of = survey(course);
    const transform = { scale, x: 20, y: 60_000 / scale + 20, turned: false };
    const marks = drawing(of, transform, { minX: 0, minY: 0, maxX: 600, maxY: 400 });
    const words = marks.filter((mark): mark is WordsMark => mark.kind === 'words');
    const markers = of.pieces.flatMap(({ key, pose }) => {
      const letter = of.letters.get(key);
      return letter === undefined ? [] : [{ letter, at: onPaper(transform, pose) }];
    });
    for (const { letter, at } of markers) {
      const [mark, ...more] = words.filter(({ text }) => text === letter);
      if (mark === undefined) throw new Error(`${letter} is not drawn`);
      expect(more).toEqual([]);
      const box = wordsBounds(mark);
      for (const other of words.filter((each) => each !== mark)) {
        const radius = other.backing === 'disc' ? backingRadius(other) : 0;
        expect(boundsIntersect(box, wordsBounds(other), 0), `${letter} on ${other.text}`).toBe(false);
        if (radius > 0) expect(distance(mark.at, other.at), `${letter} on ${other.text}`).toBeGreaterThan(radius);
      }
      const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
      const hasLeader = marks.some(
        (each) => each.kind === 'line' && each.width === 0.18 && distance(each.points.at(-1) ?? middle, at) < 1e-6,
      );
      const others = markers.filter((other) => other.letter !== letter).map((other) => distance(middle, other.at));
      expect(hasLeader || Math.min(...others) > distance(middle, at), `${letter} is nearest to its own marker`).toBe(
        true,
      );
    }
  },
);
