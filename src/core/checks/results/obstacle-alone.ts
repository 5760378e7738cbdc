import { blankCourse } from '../../course/blank.ts';
import type { Arena, Course } from '../../course/course.ts';
import { addObstacle } from '../../course/edit-obstacles.ts';
import { feet, type LengthUnit } from '../../measure/quantity.ts';
import { buildObstacle } from '../../obstacles/build.ts';
import type { Infeasible } from '../../obstacles/obstacle.ts';
import type { Values } from '../../pieces/params.ts';
import { type Survey, survey } from '../../survey.ts';
import type { Finding } from '../check.ts';
import { CHECKS, closerFindingsOf } from '../checks.ts';

/** Larger than any show arena: nothing that is found there is due to a wall or to the way in. */
const WIDE: Arena = {
  title: 'Open ground',
  length: feet(400),
  width: feet(400),
  entrance: { wall: 'west', at: feet(200), width: feet(12) },
};

/** An obstacle that lies by itself, and what the checks find about it. */
export interface ObstacleAlone {
  readonly kind: 'judged';
  readonly survey: Survey;
  readonly findings: readonly Finding[];
}

/** Checks that need the rest of the course: how many obstacles it has, what the truck carries, which leads the go shows. */
const OF_COURSE = new Set(CHECKS.flatMap(({ id, about }) => (about === 'course' ? [id] : [])));

/**
 * The obstacle in the middle of open ground, ridden in its usual way, judged by a rule book. Values are SI and as
 * `buildObstacle` takes them; what does not build comes back with its reason.
 */
export function obstacleAlone(
  kind: string,
  values: Values,
  { rulebook, unit }: { readonly rulebook: Course['rulebook']; readonly unit: LengthUnit },
): ObstacleAlone | Infeasible {
  const pose = { x: WIDE.length / 2, y: WIDE.width / 2, angle: 0 };
  const obstacle = buildObstacle(`${kind}-1`, kind, values, pose);
  if ('why' in obstacle) return obstacle;
  const surveyed = survey(addObstacle(blankCourse({ arena: WIDE, rulebook, unit }), obstacle));
  const findings = closerFindingsOf(surveyed).filter(({ check }) => !OF_COURSE.has(check));
  return { kind: 'judged', survey: surveyed, findings };
}
