import type { ObservationKind } from '../constraints/constraint.ts';
import type { PlacedPiece } from '../course/placed.ts';
import type { ResolvedConstraint } from '../course/resolved-constraints.ts';
import type { Metres } from '../measure/quantity.ts';
import { distance } from '../plane/point.ts';
import type { Ground } from './ground.ts';
import { observedOn } from './ground.ts';
import { type Candidate, constraintCandidates, isSmall, placeOn, plainCandidates } from './observables.ts';
import { predicted } from './observation-error.ts';
import type { LinearObservation } from './placement.ts';
import type { SetOutCrew } from './setout.ts';

/** A candidate with its reading and its linear form. */
export interface Weighed {
  readonly of: Candidate;
  readonly exact: number;
  readonly linear: LinearObservation;
  /** How much error a crew would accept to measure in a more usual way, metres. Estimates. */
  readonly burden: Metres;
}

/** What it is worth not to measure so, metres of standard error: a crew thinks in gaps, in level and in line. Estimates. */
const BURDEN: Readonly<Record<ObservationKind, Metres>> = {
  gap: 0.0002,
  against: 0.0001,
  clear: 0.0002,
  square: 0.0005,
  'in-line': 0.0005,
  level: 0.0005,
  beside: 0.0005,
  between: 0.001,
  ahead: 0.002,
  'off-wall': 0,
  'along-wall': 0,
  'from-rail': 0.003,
};
/** A tape that no constraint holds, an offset that is not nothing: harder to say, harder to see. */
const NOT_HELD: Metres = 0.0005;
const OFFSET: Metres = 0.002;
const NOTHING = 1e-6;

/** How many pieces that lie are asked, the nearest first, beside those that constraints tie to the piece. */
const NEAREST = 2;
/** How many straight tapes from one piece are tried: the shortest, which two sides of a triangle are as well as its diagonals. */
const STRAIGHTS = 4;

/** The linear form of an observation of `piece`; `indices` are those of pieces that lie. */
export function weighed(
  of: Candidate,
  piece: string,
  {
    ground,
    crew,
    indices,
  }: { readonly ground: Ground; readonly crew: SetOutCrew; readonly indices: ReadonlyMap<string, number> },
): Weighed {
  const { exact, sigma } = predicted(ground, of, crew);
  const { gradient } = observedOn(ground, of);
  const isFirst = 'piece' in of.grips[0] && of.grips[0].piece === piece;
  const other = of.grips[isFirst ? 1 : 0];
  const index = 'piece' in other ? (indices.get(other.piece) ?? -1) : -1;
  const [own, held] = isFirst ? [gradient[0], gradient[1]] : [gradient[1], gradient[0]];
  if (own === undefined || held === undefined) throw new Error(`set-out: ${of.kind} has no gradient of its two grips`);
  const isOffset = (of.kind === 'level' || of.kind === 'in-line' || of.kind === 'ahead') && Math.abs(exact) > NOTHING;
  const burden = BURDEN[of.kind] + (of.constraint === undefined ? NOT_HELD : 0) + (isOffset ? OFFSET : 0);
  return { of, exact, linear: { own, index, held, sigma }, burden };
}

function nearness(piece: PlacedPiece, held: PlacedPiece): Metres {
  const ends = (each: PlacedPiece) => (isSmall(each) ? [0.5] : [0, 0.5, 1]).map((at) => placeOn(each, at));
  return Math.min(...ends(piece).flatMap((a) => ends(held).map((b) => distance(a, b))));
}

/** Whether a crew of this size can do it: one person has nobody to hold the far end of a diagonal. */
function isPossible({ kind, constraint }: Candidate, { people }: SetOutCrew): boolean {
  return people > 1 || constraint !== undefined || (kind !== 'between' && kind !== 'from-rail');
}

function isTapeable({ kind }: Candidate, exact: number): boolean {
  return kind !== 'gap' || exact > 0.02;
}

/** What can be observed between a piece and those that lie: what its constraints say, and what its nearest neighbours allow. */
export function candidatesFor(
  piece: PlacedPiece,
  laid: readonly PlacedPiece[],
  {
    ground,
    crew,
    constraints,
  }: { readonly ground: Ground; readonly crew: SetOutCrew; readonly constraints: readonly ResolvedConstraint[] },
): readonly Weighed[] {
  const indices = new Map(laid.map(({ key }, i) => [key, i]));
  const byKey = new Map(laid.map((each) => [each.key, each]));
  const own = constraintCandidates(piece, byKey, constraints);
  const tied = new Set(own.flatMap(({ grips }) => grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : []))));
  const near = laid.toSorted((a, b) => nearness(piece, a) - nearness(piece, b));
  const asked = [...near.filter(({ key }) => tied.has(key)), ...near.filter(({ key }) => !tied.has(key))].slice(
    0,
    Math.max(NEAREST, Math.min(tied.size, NEAREST + 1)),
  );
  const plain = asked.flatMap((held) => {
    const all = plainCandidates(piece, held);
    const straight = all.filter(({ kind }) => kind === 'between');
    return [...all.filter(({ kind }) => kind !== 'between'), ...straight.slice(0, STRAIGHTS)];
  });
  const all = [...own, ...plain.filter((each) => !own.some((before) => isSameObservation(before, each)))];
  return all
    .filter((each) => isPossible(each, crew))
    .map((each) => weighed(each, piece.key, { ground, crew, indices }))
    .filter(({ of, exact, linear }) => isTapeable(of, exact) && linear.own.some((slope) => slope !== 0));
}

export function isSameObservation(a: Candidate, b: Candidate): boolean {
  if (a.kind !== b.kind) return false;
  const place = (of: Candidate): readonly string[] =>
    of.grips.map((grip) =>
      'wall' in grip ? grip.wall : `${grip.piece} ${of.kind === 'square' ? '' : (grip.at ?? 0.5).toFixed(3)}`,
    );
  const [first, second] = [place(a), place(b)];
  return first.every((each) => second.includes(each));
}
