import { type Course, currentLayout } from '../../course/course.ts';
import { rebuildObstacle } from '../../course/edit-obstacles.ts';
import { obstacleOf } from '../../course/ids.ts';
import type { Infeasible } from '../../obstacles/obstacle.ts';
import type { Values } from '../../pieces/params.ts';
import { type Survey, survey } from '../../survey.ts';
import type { Proposal, RawFinding, Remedy } from '../check.ts';
import { idsOf, isSameFault } from './grouped.ts';

/** More choices help nobody, and each one that is tried costs a survey. */
const MOST_REMEDIES = 3;

function isCourse(outcome: Course | Infeasible): outcome is Course {
  return !('kind' in outcome);
}

/** A proposal's edit as a remedy. Applied to a course on which the edit is not feasible, it leaves that course as it is. */
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

/** Settings that a designer makes on a single piece; building the obstacle again would lose them. */
const BY_HAND = ['raisedStart', 'raisedEnd'] as const;

/**
 * Whether every piece is still there, of the same kind and height: building an obstacle again forgets what was set by
 * hand.
 */
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

/** As much of a finding as a trial needs. */
type Told = Pick<RawFinding, 'id' | 'members' | 'weight' | 'check' | 'keys'>;

/** What a finding is about. Ridden from the other end, a gap is named from its other pole, and is the same gap. */
function subject({ id, check, keys }: Told): string {
  return keys.length < 2 ? id : `${check} ${[...keys].sort().join(' ')}`;
}

/** How many musts are about each subject. */
function mustCounts(of: readonly Told[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const each of of) if (each.weight === 'must') counts.set(subject(each), (counts.get(subject(each)) ?? 0) + 1);
  return counts;
}

/** Its own id and those of all that was put together in it: what is left of several goes by its own again. */
function faultsOf(found: Told): readonly string[] {
  return [found.id, ...idsOf(found)];
}

/** What a proposal did to a copy of the course. Only ids and weights are kept: a survey is large. */
interface Trial {
  /** Every piece is as it was, but for its place. */
  readonly keeps: boolean;
  /** What is found after it. */
  readonly after: readonly Told[];
}

/** A proposal is tried once with the same checks, however many findings it may cure. */
const trials = new WeakMap<FoundOf, WeakMap<Proposal, Trial | 'fails'>>();

function triedOn({ course }: Survey, proposal: Proposal, foundOf: FoundOf): Trial | 'fails' {
  const outcome = proposal.edit(course);
  if (!isCourse(outcome) || outcome === course) return 'fails';
  const after = foundOf(survey(outcome)).map(({ id, members, weight, check, keys }) => ({
    id,
    weight,
    check,
    keys,
    ...(members === undefined ? {} : { members }),
  }));
  return { keeps: keepsPieces(course, outcome), after };
}

function trialOf(before: Survey, proposal: Proposal, foundOf: FoundOf): Trial | undefined {
  const known = trials.get(foundOf) ?? new WeakMap<Proposal, Trial | 'fails'>();
  trials.set(foundOf, known);
  const trial = known.get(proposal) ?? triedOn(before, proposal, foundOf);
  known.set(proposal, trial);
  return trial === 'fails' ? undefined : trial;
}

type FoundOf = (survey: Survey) => readonly RawFinding[];

/** The obstacles that a finding is about. */
function obstaclesOf({ keys }: RawFinding): ReadonlySet<string> {
  return new Set(keys.map(obstacleOf));
}

/** What other findings about the same obstacles propose, where it is about one obstacle only. */
function sharedProposals(found: RawFinding, all: readonly RawFinding[]): readonly Proposal[] {
  const own = obstaclesOf(found);
  const [only] = own;
  if (only === undefined || own.size > 1) return [];
  return all
    .filter((each) => each.id !== found.id && obstaclesOf(each).size === 1 && obstaclesOf(each).has(only))
    .flatMap(({ proposals }) => proposals);
}

/**
 * The proposals that work: each is applied to a copy of the course, and kept only if its finding is gone and no new
 * must came. What other findings about the same obstacle propose is tried after its own, so that one fix for several
 * faults is offered at each. `foundOf` answers the findings of a survey.
 */
export function verifiedRemedies(before: Survey, found: RawFinding, foundOf: FoundOf): readonly Remedy[] {
  const all = foundOf(before);
  const known = new Map(all.flatMap((each) => faultsOf(each).map((id) => [id, each.weight] as const)));
  const wasMust = (each: Told): boolean => faultsOf(each).some((id) => known.get(id) === 'must');
  const wasAlike = (each: Told): boolean => faultsOf(each).some((id) => known.get(id) === each.weight);
  const mustsBefore = mustCounts(all);
  const remedies: Remedy[] = [];
  const ideas = new Set<string>();
  const sentences = new Set<string>();
  for (const proposal of [...found.proposals, ...sharedProposals(found, all)]) {
    if (remedies.length === MOST_REMEDIES) break;
    if (sentences.has(proposal.says) || (proposal.idea !== undefined && ideas.has(proposal.idea))) continue;
    const trial = trialOf(before, proposal, foundOf);
    if (trial === undefined) continue;
    const { keeps, after } = trial;
    if (after.some((each) => isSameFault(each, found))) continue;
    const mustsAfter = mustCounts(after);
    const isNewMust = (each: Told): boolean =>
      each.weight === 'must' &&
      !wasMust(each) &&
      (mustsAfter.get(subject(each)) ?? 0) > (mustsBefore.get(subject(each)) ?? 0);
    if (after.some(isNewMust)) continue;
    const isQuiet = after.every((each) => each.weight === 'note' || wasAlike(each) || wasMust(each));
    remedies.push(remedyOf(proposal, isQuiet && proposal.meant !== true && keeps));
    sentences.add(proposal.says);
    if (proposal.idea !== undefined) ideas.add(proposal.idea);
  }
  return remedies;
}

/** The obstacle built again with the given values; where that is refused, with the nearest values that build. */
export function rebuildNear(course: Course, obstacle: string, values: Values): Course | Infeasible {
  const outcome = rebuildObstacle(course, obstacle, values, { reset: Object.keys(values) });
  if (isCourse(outcome) || outcome.nearest === undefined) return outcome;
  const nearest = { ...values, ...outcome.nearest };
  return rebuildObstacle(course, obstacle, nearest, { reset: Object.keys(nearest) });
}
