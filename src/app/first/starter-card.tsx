import { arenaSizeWords } from '../../core/course/arena-size.ts';
import { type Course, currentLayout } from '../../core/course/course.ts';
import { placedObstacle } from '../../core/course/placed.ts';
import { polePiece } from '../../core/pieces/pole.ts';
import { starterWords as words } from '../../words/first-visit.ts';
import { LEVEL_WORDS } from '../app-words.ts';
import type { StarterCourse } from './starter-courses.ts';
import { Thumbnail } from './thumbnail.tsx';

/** How many poles lie in the layout that is shown. */
export function polesOf(course: Course): number {
  const pieces = currentLayout(course).obstacles.flatMap((each) => placedObstacle(each).pieces);
  return pieces.filter(({ kind }) => kind.id === polePiece.id).length;
}

/** How many obstacles are ridden: what only dresses the course is not counted. */
function riddenOf(course: Course): number {
  return new Set(currentLayout(course).ride.legs.map(({ obstacle }) => obstacle)).size;
}

/** Level, size and needs: what somebody asks who looks for a course to begin from. */
function factsOf(course: Course): readonly string[] {
  const { class: entry, arena, unit, layouts } = course;
  return [
    LEVEL_WORDS[entry.level],
    arenaSizeWords(arena, unit),
    words.obstacles(riddenOf(course)),
    words.poles(polesOf(course)),
    ...(layouts.length > 1 ? [words.layouts(layouts.length)] : []),
  ];
}

/** One starter to press: its picture, its title, and what it needs. `title` is what it is called until it is read. */
export function StarterCard({
  name,
  title,
  starter,
  choose,
}: {
  readonly name: string;
  readonly title: string;
  readonly starter: StarterCourse | null | undefined;
  choose(course: Course): void;
}) {
  const course = starter?.course;
  return (
    <button
      type="button"
      className="starter"
      data-starter={name}
      disabled={course === undefined}
      onClick={() => course !== undefined && choose(course)}
    >
      <Thumbnail survey={starter?.survey} />
      <span className="starter-title">{course?.title ?? title}</span>
      <small>
        {course !== undefined
          ? factsOf(course).map((fact) => (
              <span key={fact} className="fact">
                {fact}
              </span>
            ))
          : starter === null
            ? words.unreadable
            : words.reading}
      </small>
    </button>
  );
}
