/** Courses drawn at random: an arena, five to eleven obstacles of any kind that lie clear of each other, ridden round it. */
import { seededRandom } from '../../../src/core/change/seeded-random.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Arena, Course } from '../../../src/core/course/course.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import type { Bounds } from '../../../src/core/plane/ring.ts';

/** Length and width of arenas, feet. */
const SIZES = [
  [200, 100],
  [250, 120],
  [300, 150],
  [197, 66],
  [130, 80],
  [160, 130],
] as const;
/** Between the pieces of two obstacles, and to the rail, metres. */
const AIR = 1.8;
/** Not ridden in a go, or without pieces of its own. */
const LEFT_OUT = new Set(['scenery', 'free']);

function isClear(bounds: Bounds, { length, width }: Arena, others: readonly Bounds[]): boolean {
  if (bounds.minX < AIR || bounds.minY < AIR || bounds.maxX > length - AIR || bounds.maxY > width - AIR) return false;
  return others.every(
    (other) =>
      bounds.minX > other.maxX + AIR ||
      other.minX > bounds.maxX + AIR ||
      bounds.minY > other.maxY + AIR ||
      other.minY > bounds.maxY + AIR,
  );
}

/** The same for the same number. */
export function randomCourse(number: number): Course {
  const roll = seededRandom(140_000 + number);
  const [long, short] = SIZES[Math.floor(roll() * SIZES.length)] ?? SIZES[0];
  const entrance = { wall: roll() < 0.5 ? 'west' : 'south', at: (10 + roll() * 40) * FOOT, width: 12 * FOOT } as const;
  const arena: Arena = { title: 'Larkhollow Fairground', length: long * FOOT, width: short * FOOT, entrance };
  const kinds = OBSTACLE_KINDS.filter(({ id }) => !LEFT_OUT.has(id));
  const wanted = 5 + Math.floor(roll() * 7);
  const made: { readonly obstacle: Obstacle; readonly bounds: Bounds }[] = [];
  for (let tried = 0; tried < 300 && made.length < wanted; tried += 1) {
    const kind = kinds[Math.floor(roll() * kinds.length)]?.id ?? 'run';
    const pose = {
      x: roll() * arena.length,
      y: roll() * arena.width,
      angle: (Math.floor(roll() * 24) * Math.PI) / 12,
    };
    const built = buildObstacle(`${kind}-${made.length + 1}`, kind, {}, pose, roll() < 0.5 ? 1 : -1);
    if ('why' in built) continue;
    const { bounds } = placedObstacle(built);
    if (
      isClear(
        bounds,
        arena,
        made.map((each) => each.bounds),
      )
    )
      made.push({ obstacle: built, bounds });
  }
  const around = ({ bounds }: { readonly bounds: Bounds }): number =>
    Math.atan2(bounds.minY + bounds.maxY - arena.width, bounds.minX + bounds.maxX - arena.length);
  const blank = blankCourse({ title: `Course ${number}`, unit: roll() < 0.5 ? 'ft' : 'm', arena });
  return made
    .toSorted((a, b) => around(a) - around(b))
    .reduce((course, { obstacle }) => addObstacle(course, obstacle), blank);
}
