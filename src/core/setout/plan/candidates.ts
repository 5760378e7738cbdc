import type { ObservationKind } from '../../constraints/constraint.ts';
import type { PlacedPiece } from '../../course/placed.ts';
import type { ResolvedConstraint } from '../../course/resolved-constraints.ts';
import type { LengthUnit, Metres } from '../../measure/quantity.ts';
import { distance } from '../../plane/point.ts';
import type { Ground } from '../ground.ts';
import { observedOn } from '../ground.ts';
import { type Candidate, constraintCandidates, isSmall, placeOn, plainCandidates } from '../observables.ts';
import { predicted } from '../observation-error.ts';
import type { Observation, SetOutCrew } from '../setout.ts';
import type { LinearObservation } from './placement.ts';
import { roundedReading } from './rounded-build.ts';

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
  'from-rail': 0.01,
};
/** A tape that no constraint holds, an offset that is not nothing: harder to say, harder to see. */
const NOT_HELD: Metres = 0.0005;
/** For each metre of tape: past pieces that lie between, and further to walk. */
const FAR = 0.0003;
/** The same off a wall, where the tape lies free and is swung until it is square. */
const FAR_OFF = 0.0004;
const OFFSET: Metres = 0.002;
const NOTHING = 1e-6;

/** How many pieces that lie are asked, the nearest first, beside those that constraints tie to the piece. */
const NEAREST = 2;

/** The linear form of an observation of `piece`, as if the other were a wall: who knows its index puts it in. */
export function weighed(
  of: Candidate,
  piece: string,
  { ground, crew }: { readonly ground: Ground; readonly crew: SetOutCrew },
): Weighed {
  const { exact, sigma } = predicted(ground, of, crew);
  const { gradient } = observedOn(ground, of);
  const isFirst = 'piece' in of.grips[0] && of.grips[0].piece === piece;
  const [own, held] = isFirst ? [gradient[0], gradient[1]] : [gradient[1], gradient[0]];
  if (own === undefined || held === undefined) throw new Error(`set-out: ${of.kind} has no gradient of its two grips`);
  const isOffset = (of.kind === 'level' || of.kind === 'in-line' || of.kind === 'ahead') && Math.abs(exact) > NOTHING;
  const burden =
    BURDEN[of.kind] +
    (of.constraint === undefined ? NOT_HELD : 0) +
    (isOffset ? OFFSET : 0) +
    (of.kind === 'off-wall' ? FAR_OFF : FAR) * Math.abs(exact);
  const turns = of.kind === 'between' && exact < SHORT ? TURNS : 0;
  return { of, exact, linear: { own, index: -1, held, sigma }, burden: burden + turns };
}

function nearness(piece: PlacedPiece, held: PlacedPiece): Metres {
  const ends = (each: PlacedPiece) => (isSmall(each) ? [0.5] : [0, 0.5, 1]).map((at) => placeOn(each, at));
  return Math.min(...ends(piece).flatMap((a) => ends(held).map((b) => distance(a, b))));
}

/** Whether a crew of this size can do it: one person has nobody to hold the far end of a diagonal. */
function isPossible({ kind, constraint }: Candidate, { people }: SetOutCrew): boolean {
  return people > 1 || constraint !== undefined || (kind !== 'between' && kind !== 'from-rail');
}

/** Sine of the least angle at which a tape crosses a pole: a crew does not see where it leaves a pole at less than 30°. Estimate. */
const LEAST_ACROSS = 0.5;
/** A straight tape shorter than this turns about its end, and two of its answers lie side by side; metres. Estimates. */
const SHORT: Metres = 0.3;
const TURNS: Metres = 0.002;
/** Less than this is not taped but pushed together, metres. */
const LEAST_TAPED: Metres = 0.02;

function isTapeable(ground: Ground, of: Candidate, exact: number): boolean {
  if (of.kind === 'gap') return exact > LEAST_TAPED && crossesBoth(ground, of);
  return of.kind !== 'beside' || exact > LEAST_TAPED;
}

/** Whether the tape of a gap lies across both poles, and not nearly along one. */
function crossesBoth({ pieces }: Ground, { grips }: Candidate): boolean {
  const [a, b] = grips.map((grip) =>
    'wall' in grip ? undefined : { piece: pieces.get(grip.piece), at: grip.at ?? 0.5 },
  );
  if (a?.piece === undefined || b?.piece === undefined) return false;
  const [from, to] = [placeOn(a.piece, a.at), placeOn(b.piece, b.at)];
  const tape = Math.atan2(to.y - from.y, to.x - from.x);
  return [a.piece, b.piece].every(({ pose }) => Math.abs(Math.sin(tape - pose.angle)) >= LEAST_ACROSS);
}

/** What the choice of observations asks; `pairs` caches what two pieces offer each other, by their keys. */
export interface CandidateQuestion {
  readonly ground: Ground;
  readonly crew: SetOutCrew;
  readonly constraints: readonly ResolvedConstraint[];
  readonly pairs: Map<string, readonly Weighed[]>;
}

/** What a piece and one that lies already offer, with the index of that one left open: what constraints say comes first. */
function offered(piece: PlacedPiece, held: PlacedPiece, question: CandidateQuestion): readonly Weighed[] {
  const key = `${piece.key} ${held.key}`;
  const cached = question.pairs.get(key);
  if (cached !== undefined) return cached;
  const { ground, crew, constraints } = question;
  const own = constraintCandidates(piece, new Map([[held.key, held]]), constraints);
  const plain = plainCandidates(piece, held).filter((each) => !own.some((before) => isSameObservation(before, each)));
  const made = [...own, ...plain]
    .filter((each) => isPossible(each, crew))
    .map((each) => weighed(each, piece.key, { ground, crew }))
    .filter(({ of, exact, linear }) => isTapeable(ground, of, exact) && linear.own.some((slope) => slope !== 0));
  question.pairs.set(key, made);
  return made;
}

/** What can be observed between a piece and those that lie: what its constraints say, and what its nearest neighbours allow. */
export function candidatesFor(
  piece: PlacedPiece,
  laid: readonly PlacedPiece[],
  question: CandidateQuestion,
): readonly Weighed[] {
  const near = laid
    .map((held, index) => ({ held, index, far: nearness(piece, held), offers: offered(piece, held, question) }))
    .toSorted((a, b) => a.far - b.far)
    .map((each) => ({ ...each, isTied: each.offers.some(({ of }) => of.constraint !== undefined) }));
  const tied = near.filter(({ isTied }) => isTied);
  const asked = [...tied, ...near.filter(({ isTied }) => !isTied)].slice(
    0,
    Math.max(NEAREST, Math.min(tied.length, NEAREST + 1)),
  );
  return near.flatMap((each) => {
    const offers = asked.includes(each) ? each.offers : each.offers.filter(({ of }) => of.constraint !== undefined);
    return offers.map((offer) => ({ ...offer, linear: { ...offer.linear, index: each.index } }));
  });
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

/** What a crew is told of it: the reading rounded to the tape. */
export function observationOf({ of, exact, linear }: Weighed, marked: LengthUnit): Observation {
  return { ...of, exact, reading: roundedReading(of, exact, marked), sigma: linear.sigma };
}
