import { expect, test } from 'vitest';
import { type Camera, screenOf } from '../../../../src/app/arena/camera.ts';
import { screenBox } from '../../../../src/app/arena/painters/labels.ts';
import { letterPlaces } from '../../../../src/app/arena/painters/paint-letters.ts';
import { blankCourse } from '../../../../src/core/course/blank.ts';
import { addObstacle } from '../../../../src/core/course/edit-obstacles.ts';
import { buildObstacle } from '../../../../src/core/obstacles/build.ts';
import { pathPoints } from '../../../../src/core/plane/path.ts';
import { distance } from '../../../../src/core/plane/point.ts';
import { boundsIntersect } from '../../../../src/core/plane/ring.ts';
import { survey } from '../../../../src/core/survey.ts';

const COURSE = (['back-markers', 'serpentine'] as const).reduce((course, kind, i) => {
  const built = buildObstacle(kind, kind, {}, { x: 12 + 20 * i, y: 15, angle: i });
  if ('why' in built) throw new Error(built.why);
  return addObstacle(course, built);
}, blankCourse());
const of = survey(COURSE);

function camera(scale: number): Camera {
  return { scale, x: 10, y: 900, turned: false };
}

test.each([12, 25, 60])(
  'at %i pixels a metre every letter stands beside its marker, off the pieces and the others',
  (scale) => {
    const places = letterPlaces(of, camera(scale));
    expect(places.map(({ letter }) => letter)).toEqual([...of.letters.values()]);
    const pieces = of.pieces.map((piece) => screenBox(piece.bounds, camera(scale)));
    places.forEach(({ letter, box }, i) => {
      for (const other of [...pieces, ...places.slice(i + 1).map((each) => each.box)]) {
        expect(boundsIntersect(box, other, 0), letter).toBe(false);
      }
      const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
      const [nearest] = of.pieces.toSorted(
        (a, b) => distance(middle, screenOf(camera(scale), a.pose)) - distance(middle, screenOf(camera(scale), b.pose)),
      );
      expect(of.letters.get(nearest?.key ?? '')).toBe(letter);
    });
  },
);

test('where the picture is too small to tell them apart no letter is shown', () => {
  expect(letterPlaces(of, camera(5))).toEqual([]);
});

test('a letter gives way to words that stand there already', () => {
  const [first] = letterPlaces(of, camera(25));
  if (first === undefined) throw new Error('there are letters');
  const [moved] = letterPlaces(of, camera(25), [first.box]);
  expect(moved?.letter).toBe(first.letter);
  expect(boundsIntersect(moved?.box ?? first.box, first.box, 0)).toBe(false);
});

test('no letter lies on the line among its markers where there is room beside it', () => {
  const eye = camera(25);
  const dots = of.line.elements
    .filter(({ part }) => part === 'obstacle')
    .flatMap(({ path }) => pathPoints(path, 0.1).map((point) => screenOf(eye, point)));
  const weave = letterPlaces(of, eye).filter(({ letter }) => letter > 'C');
  expect(weave).toHaveLength(4);
  for (const { letter, box } of weave) {
    const on = dots.filter(({ x, y }) => x > box.minX + 1 && x < box.maxX - 1 && y > box.minY + 1 && y < box.maxY - 1);
    expect(on, letter).toEqual([]);
  }
});
