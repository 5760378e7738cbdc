import { type Course, currentLayout } from '../../course/course.ts';
import { rebuildObstacle } from '../../course/edit-obstacles.ts';
import type { Infeasible } from '../../obstacles/obstacle.ts';
import type { Values } from '../../pieces/params.ts';
import { type Survey, survey } from '../../survey.ts';
import type { Proposal, RawFinding, Remedy } from '../check.ts';

/** More choices than this help nobody, and each one tried costs a survey. */
const MOST_REMEDIES = 3;

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

/** What a designer sets on a piece by hand, and a kind does not know when it builds anew. */
const BY_HAND = ['raisedStart', 'raisedEnd'] as const;

/** Whether every piece is still there, of its kind and as high as it was: what is built anew forgets that. */
function keepsPieces(before: Course, after: Course): boolean {
  const next = new Map(currentLayout(after).obstacles.map((obstacle) => [obstacle.id, obstacle]));
  return currentLayout(before).obstacles.every((obstacle) => {
    const now = next.get(obstacle.id);
    if (now === obstacle) return true;
    return obstacle.pieces.every((piece) => {
      const same = now?.pieces.find(({ id }) => id === piece.id);
      return same?.kind === piece.kind && BY_HAND.every((key) => (same.values[key] ?? 0) === (piece.values[key] ?? 0));
    });
  });
}

/**
 * The proposals that mend: each is applied to a copy, and offered only if the finding is gone from it and no must has
 * come that was not there before. `foundOf` answers the findings of a survey.
 */
export function verifiedRemedies(
  before: Survey,
  found: RawFinding,
  foundOf: (survey: Survey) => readonly RawFinding[],
): readonly Remedy[] {
  const known = new Map(foundOf(before).map(({ id, weight }) => [id, weight]));
  const remedies: Remedy[] = [];
  const ideas = new Set<string>();
  for (const proposal of found.proposals) {
    if (remedies.length === MOST_REMEDIES) break;
    if (proposal.idea !== undefined && ideas.has(proposal.idea)) continue;
    const outcome = proposal.edit(before.course);
    if (!isCourse(outcome) || outcome === before.course) continue;
    const after = foundOf(survey(outcome));
    if (after.some(({ id }) => id === found.id)) continue;
    if (after.some(({ id, weight }) => weight === 'must' && known.get(id) !== 'must')) continue;
    const isQuiet = after.every(
      ({ id, weight }) => weight === 'note' || known.get(id) === weight || known.get(id) === 'must',
    );
    remedies.push(remedyOf(proposal, isQuiet && proposal.meant !== true && keepsPieces(before.course, outcome)));
    if (proposal.idea !== undefined) ideas.add(proposal.idea);
  }
  return remedies;
}

/** The obstacle built again with the given values; where that is refused, with the nearest values that build. */
export function rebuildNear(course: Course, obstacle: string, values: Values): Course | Infeasible {
  const outcome = rebuildObstacle(course, obstacle, values);
  if (isCourse(outcome) || outcome.nearest === undefined) return outcome;
  return rebuildObstacle(course, obstacle, { ...values, ...outcome.nearest });
}
