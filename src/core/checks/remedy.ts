import type { Course } from '../course/course.ts';
import { rebuilt } from '../course/edit-obstacles.ts';
import type { Infeasible } from '../obstacles/obstacle.ts';
import type { Values } from '../pieces/params.ts';
import { type Survey, survey } from '../survey.ts';
import type { Found, Proposal, Remedy } from './check.ts';

/** More choices than this help nobody, and each one tried costs a survey. */
const OFFERED = 3;

function isCourse(outcome: Course | Infeasible): outcome is Course {
  return !('kind' in outcome);
}

/** A proposal's edit as a remedy: where it does not build on another course, that course stays as it is. */
function remedyOf({ says, edit }: Proposal, isSafe: boolean): Remedy {
  return {
    says,
    ...(isSafe ? { safe: true } : {}),
    apply(course) {
      const outcome = edit(course);
      return isCourse(outcome) ? outcome : course;
    },
  };
}

/**
 * The proposals that mend: each is applied to a copy, and offered only if the finding is gone from it and no must has
 * come that was not there before. `foundOf` says what the checks find in a survey.
 */
export function offered(
  before: Survey,
  found: Found,
  foundOf: (survey: Survey) => readonly Found[],
): readonly Remedy[] {
  const known = new Map(foundOf(before).map(({ id, weight }) => [id, weight]));
  const remedies: Remedy[] = [];
  const ideas = new Set<string>();
  for (const proposal of found.proposals) {
    if (remedies.length === OFFERED) break;
    if (proposal.idea !== undefined && ideas.has(proposal.idea)) continue;
    const outcome = proposal.edit(before.course);
    if (!isCourse(outcome) || outcome === before.course) continue;
    const after = foundOf(survey(outcome));
    if (after.some(({ id }) => id === found.id)) continue;
    if (after.some(({ id, weight }) => weight === 'must' && known.get(id) !== 'must')) continue;
    const isQuiet = after.every(
      ({ id, weight }) => weight === 'note' || known.get(id) === weight || known.get(id) === 'must',
    );
    remedies.push(remedyOf(proposal, isQuiet && proposal.meant !== true));
    if (proposal.idea !== undefined) ideas.add(proposal.idea);
  }
  return remedies;
}

/** The obstacle built again with the given values; where that is refused, with the nearest values that build. */
export function rebuiltNear(course: Course, obstacle: string, values: Values): Course | Infeasible {
  const outcome = rebuilt(course, obstacle, values);
  if (isCourse(outcome) || outcome.nearest === undefined) return outcome;
  return rebuilt(course, obstacle, { ...values, ...outcome.nearest });
}
