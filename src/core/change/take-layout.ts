import { arenaSizeWords, isSameSize } from '../course/arena-size.ts';
import { type Arena, type Course, currentLayout } from '../course/course.ts';
import { addLayout, freeTitle } from '../course/layouts.ts';
import { TOUCH } from '../plane/point.ts';
import { type Survey, survey, type TruckUse } from '../survey.ts';
import { andList } from '../text/sentence.ts';
import { obstacleLabel } from './difference-words.ts';
import { layoutById } from './layout-survey.ts';

/** A course with a layout that was taken from another one, and what the designer should know about it, a sentence each. */
export interface TakenLayout {
  readonly course: Course;
  readonly says: readonly string[];
}

/** The obstacles that reach beyond a wall, by their titles. */
function outside({ course: { arena }, layout, obstacles }: Survey): readonly string[] {
  return obstacles
    .filter(({ bounds: { minX, minY, maxX, maxY } }) => {
      return minX < -TOUCH || minY < -TOUCH || maxX > arena.length + TOUCH || maxY > arena.width + TOUCH;
    })
    .map(({ obstacle }) => obstacleLabel(obstacle, layout));
}

function arenaSays(of: Survey, there: Arena): readonly string[] {
  const { arena, unit } = of.course;
  if (isSameSize(arena, there)) return [];
  const beyond = outside(of);
  return [
    `It was laid out in an arena of ${arenaSizeWords(there, unit)}; this one is ${arenaSizeWords(arena, unit)}. ` +
      'It lies as it lay there, measured from the west and the south wall.',
    ...(beyond.length === 0 ? [] : [`Beyond the walls of this arena: ${beyond.join('; ')}.`]),
  ];
}

/** `3 × Pole`: pieces that the truck does not know, by kind. */
function strangers({ pieces }: Survey, { keys }: TruckUse): string {
  const wanted = new Set(keys);
  const counts = new Map<string, number>();
  for (const { key, kind } of pieces) {
    if (wanted.has(key)) counts.set(kind.title, (counts.get(kind.title) ?? 0) + 1);
  }
  return andList([...counts].map(([title, count]) => `${count} × ${title}`));
}

/** What the truck does not have. A course without a truck list counts nothing. */
function truckSays(of: Survey): readonly string[] {
  if (of.course.truck.length === 0) return [];
  return of.truck
    .filter(({ left }) => left < 0)
    .map((use) =>
      use.stock === null
        ? `The truck has nothing of the kind and size of ${strangers(of, use)}.`
        : `The truck has ${use.stock.count} of ${use.title}; this layout uses ${use.used}.`,
    );
}

/**
 * The course with a layout of another one added last, and shown. It lies as it lies there; arena, truck, horse and class
 * stay those of this course. Throws when the other has no such layout.
 */
export function takeLayout(course: Course, other: Course, id: string): TakenLayout {
  const layout = layoutById(other, id);
  const taken = addLayout(course, { ...layout, title: freeTitle(course, layout.title) });
  const now = survey(taken);
  const there = survey(other);
  return {
    course: taken,
    says: [
      ...arenaSays(now, other.arena),
      ...(now.horse.id === there.horse.id
        ? []
        : [`It was made for ${there.horse.title}; here it is ridden by ${now.horse.title}.`]),
      ...truckSays(now),
      ...(currentLayout(taken).title === layout.title
        ? []
        : [`Its name was taken, so it is called “${currentLayout(taken).title}”.`]),
    ],
  };
}
