import { entranceMiddle } from '../course/entrance.ts';
import type { PlacedPiece } from '../course/placed.ts';
import { type ResolvedConstraint, resolvedConstraints, wallKey } from '../course/resolved-constraints.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Pose } from '../plane/pose.ts';
import { ringBounds } from '../plane/ring.ts';
import type { Survey } from '../survey.ts';
import { setOutCrewOf } from './crew.ts';
import type { Ground } from './ground.ts';
import { endLetters } from './letters.ts';
import { isSmall } from './observables.ts';
import { candidatesFor, observationOf, type Weighed } from './plan/candidates.ts';
import type { Determined } from './plan/determine.ts';
import { wallCandidates } from './plan/first-piece.ts';
import { gapErrors } from './plan/gap-errors.ts';
import { bestOrder, type LaidOrder, type OrderQuestion, withWalls } from './plan/laying-order.ts';
import { leadingPart } from './plan/leading-part.ts';
import { type MeasuredGap, measuredGaps } from './plan/measured-gaps.ts';
import { tiedObstacles } from './plan/parts.ts';
import { pieceError } from './plan/piece-error.ts';
import { NOTHING_LAID } from './plan/placement.ts';
import { proofs } from './plan/proofs.ts';
import { laidBy } from './plan/rounded-build.ts';
import { shortWalk } from './plan/walk.ts';
import { weakFix } from './plan/weak-fix.ts';
import type { Observation, SetOut, SetOutCrew, SetOutPart, SetOutStep } from './setout.ts';

/** How a part is laid, before it is told in steps. */
export interface OrderedPart {
  readonly obstacles: readonly [string, ...string[]];
  readonly question: OrderQuestion;
  readonly order: LaidOrder;
}

/** What the tape is held to: pieces by key, walls by name. */
function heldBy(piece: string, observations: readonly Observation[]): readonly string[] {
  const names = observations.flatMap(({ grips }) =>
    grips.map((grip) => ('wall' in grip ? wallKey(grip.wall) : grip.piece)).filter((name) => name !== piece),
  );
  return [...new Set(names)];
}

/** What a step can be proved by: what is near, and the walls where nothing near is left. */
function provable(piece: PlacedPiece, laid: readonly PlacedPiece[], question: OrderQuestion): readonly Weighed[] {
  const near = candidatesFor(piece, laid, question);
  return near.length > (isSmall(piece) ? 2 : 3) ? near : withWalls(piece, laid, question);
}

function stepOf({ order, question }: OrderedPart, index: number): SetOutStep {
  const { ground, crew } = question;
  const piece = order.pieces[index] as PlacedPiece;
  const by = order.by[index] as Determined;
  const laid = order.pieces.slice(0, index);
  const covariance = index === 0 ? NOTHING_LAID : leadingPart(order.covariance, index);
  const candidates = index === 0 ? wallCandidates(piece, ground, crew) : provable(piece, laid, question);
  const observations = by.observations.map((each) => observationOf(each, crew.marked));
  const weak = weakFix(by, candidates, crew.marked);
  return {
    number: index + 1,
    piece: piece.key,
    held: heldBy(piece.key, observations),
    observations,
    ...(isSmall(piece) ? { turnedByEye: true as const } : {}),
    checks: proofs(candidates, by.observations, { covariance, by: by.solved, marked: crew.marked }),
    error: pieceError(piece, order.pieces[0] as PlacedPiece, leadingPart(order.covariance, index + 1)),
    ...(weak === undefined ? {} : { weak }),
  };
}

function partOf(ordered: OrderedPart): SetOutPart {
  const { order, obstacles } = ordered;
  const [first, ...others] = order.pieces.map((_, i) => stepOf(ordered, i));
  const [piece] = order.pieces;
  if (first === undefined || piece === undefined) throw new Error('set-out: a part has no piece');
  return {
    obstacles,
    steps: [first, ...others],
    place: pieceError(piece, piece, leadingPart(order.covariance, 1)),
    letters: endLetters(order.pieces),
  };
}

/** The poses to which the rounded readings lead, piece by piece, without an error. */
function builtPoses(ground: Ground, parts: readonly SetOutPart[]): ReadonlyMap<string, Pose> {
  const poses = new Map<string, Pose>();
  for (const { steps } of parts) {
    for (const { piece, observations } of steps) poses.set(piece, laidBy(ground, piece, observations, poses));
  }
  return poses;
}

/** Which pieces are laid one from another, and in which order by which observations: every choice of the plan. */
export function orderedParts(
  survey: Survey,
  crew: SetOutCrew,
  choose: (pieces: readonly PlacedPiece[], question: OrderQuestion) => LaidOrder = bestOrder,
): { readonly parts: readonly OrderedPart[]; readonly ground: Ground; readonly gaps: readonly MeasuredGap[] } {
  const { layout, course, pieces } = survey;
  const ground: Ground = { arena: course.arena, pieces: new Map(pieces.map((each) => [each.key, each])) };
  const constraints: readonly ResolvedConstraint[] = resolvedConstraints(layout);
  const gaps = measuredGaps(survey);
  const question = { ground, crew, constraints, gaps, pairs: new Map() };
  const tied = tiedObstacles(
    layout.obstacles.map(({ id }) => id),
    { constraints, gaps },
  );
  const parts = tied.flatMap((obstacles): OrderedPart[] => {
    const own = pieces.filter(({ obstacle }) => obstacles.includes(obstacle));
    const [first, ...others] = obstacles;
    if (own.length === 0 || first === undefined) return [];
    return [{ obstacles: [first, ...others], question, order: choose(own, question) }];
  });
  return { parts, ground, gaps };
}

/** The set-out by a choice of orders: for those who compare orders. */
export function setOutBy(survey: Survey, crew: SetOutCrew, choose = bestOrder): SetOut {
  const { parts, ground, gaps } = orderedParts(survey, crew, choose);
  const centres = parts.map(({ order }) => {
    const { minX, maxX, minY, maxY } = ringBounds(order.pieces.flatMap(({ footprint }) => footprint));
    return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  });
  const { order, walked } = shortWalk(entranceMiddle(survey.course.arena), centres);
  const inOrder = order.map((i) => parts[i] as OrderedPart);
  const told = inOrder.map(partOf);
  const built = builtPoses(ground, told);
  const errors = gapErrors(gaps, inOrder, { ground, built });
  return {
    crew,
    parts: told,
    built,
    gaps: errors,
    worstGap: errors.reduce((most, { sigma, isRidden }) => (isRidden ? Math.max(most, sigma) : most), 0),
    walked: walked + inOrder.reduce((sum, part) => sum + part.order.walked, 0),
  };
}

/**
 * How a crew sets a layout out: parts that are tied together are laid piece from piece, their first piece from the walls, in
 * the order and by the observations that keep the worst gap error small and then the walking short. Errors are standard
 * errors, to first order. Source of the method: propagation of variances, any surveying handbook.
 */
export function planSetOut(survey: Survey, crew: SetOutCrew): SetOut {
  return setOutBy(survey, crew);
}

/** The set-out by the course's own crew and tapes; worked out on first access, then cached. */
export const setOutOf = memoizeByIdentity((survey: Survey): SetOut => planSetOut(survey, setOutCrewOf(survey.course)));
