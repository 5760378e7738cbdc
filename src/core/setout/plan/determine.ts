import type { PlacedPiece } from '../../course/placed.ts';
import type { Metres } from '../../measure/quantity.ts';
import type { Pose } from '../../plane/pose.ts';
import { type Ground, observedOn } from '../ground.ts';
import { isSmall } from '../observables.ts';
import type { SetOutCrew } from '../setout.ts';
import { isStraight, USUAL_TAPE } from '../tape-errors.ts';
import type { Weighed } from './candidates.ts';
import type { MeasuredGap } from './measured-gaps.ts';
import {
  type Covariance,
  covarianceOf,
  inverse,
  LEAST_MEETING,
  type LinearObservation,
  type Matrix,
  noise,
  type Solved,
  solved,
  timesMatrix,
} from './placement.ts';

/** How one piece is determined. */
export interface Determined {
  readonly observations: readonly Weighed[];
  readonly solved: Solved;
  /** Largest standard error of a gap between this piece and one that lies; 0 when there is none. */
  readonly worstGap: Metres;
  /** What is minimised, metres: twice `worstGap`, a share of where its ends lie, and the burden of measuring so. */
  readonly cost: Metres;
}

/** The heading of a small thing is set by eye: it counts as an observation of its own. */
const BY_EYE: LinearObservation = { own: [0, 0, 1], index: -1, held: [0, 0, 0], sigma: USUAL_TAPE.byEye.value };

/** How much the worst gap counts: it is what a crew sets out for. Estimate. */
const GAP = 2;
/** How much an error of an end that spoils no gap counts. Estimate. */
const SHARE_OF_ENDS = 0.15;
/** The same of the first piece, which carries the others: an obstacle is seen against the walls. Estimate. */
const SHARE_OF_FIRST = 0.5;
/** No more candidates of one kind to one piece than this are combined: those that see the piece most sharply for their burden. */
const MOST_OF_A_KIND = 2;
const MOST_STRAIGHT = 4;
/** What it counts when no two observations meet at 60° or more, metres of standard error. Estimate. */
const WEAK: Metres = 0.004;
/** Cosine of that angle, with what arithmetic adds. */
const MEETING = Math.cos(LEAST_MEETING) + 1e-9;
const NOTHING = [0, 0, 0] as const;

/** The gaps between a piece and pieces that lie, as gradients. */
interface LinearGap {
  readonly own: readonly [number, number, number];
  readonly index: number;
  readonly held: readonly [number, number, number];
}

function linearGaps({ ground, gaps, indices }: DetermineQuestion, piece: PlacedPiece): readonly LinearGap[] {
  return gaps.flatMap(({ of, keys }) => {
    if (!keys.includes(piece.key)) return [];
    const isFirst = keys[0] === piece.key;
    const index = indices.get(keys[isFirst ? 1 : 0]);
    if (index === undefined) return [];
    const { gradient } = observedOn(ground, of);
    const [own, held] = isFirst ? [gradient[0], gradient[1]] : [gradient[1], gradient[0]];
    return own === undefined || held === undefined ? [] : [{ own, index, held }];
  });
}

/** The directions in which the ends of a piece can be off: both axes at both ends, of a small thing at its middle. */
export function endDirections({ pose, figure, kind }: PlacedPiece): readonly (readonly [number, number, number])[] {
  const reach = kind.extent === 'small' ? 0 : figure.length / 2;
  const [ux, uy] = [Math.cos(pose.angle), Math.sin(pose.angle)];
  return [reach, -reach].flatMap((r) => [
    [1, 0, -r * uy],
    [0, 1, r * ux],
  ]) as readonly (readonly [number, number, number])[];
}

/**
 * How a direction of a piece moves when the first piece of its part moves as if both were one. A small first piece has no
 * heading that anybody takes up: it only shifts the others.
 */
export function carriedBy(
  first: PlacedPiece,
  { x, y }: Pose,
  [a, b, c]: readonly [number, number, number],
): readonly [number, number, number] {
  const { pose } = first;
  return [-a, -b, isSmall(first) ? 0 : a * (y - pose.y) - b * (x - pose.x) - c];
}

/** What is asked about a piece that is to be determined. */
export interface DetermineQuestion {
  readonly ground: Ground;
  readonly crew: SetOutCrew;
  readonly gaps: readonly MeasuredGap[];
  /** Indices of the pieces that lie, by key. */
  readonly indices: ReadonlyMap<string, number>;
  /** The first piece of the part: errors of ends are relative to it. Absent: this is the first. */
  readonly first?: PlacedPiece;
}

/**
 * The best observations for a piece among the candidates: the three (of a small thing two) that keep its gaps, then its ends,
 * most sure. Undefined when no three determine it.
 */
export function determined(
  piece: PlacedPiece,
  candidates: readonly Weighed[],
  of: Covariance,
  question: DetermineQuestion,
): Determined | undefined {
  const few = sharpest(candidates);
  const forms = [...few.map(({ linear }) => linear), BY_EYE];
  const eye = few.length;
  const first = question.first;
  const asked = [
    ...linearGaps(question, piece),
    ...endDirections(piece).map((own) => ({
      own,
      index: first === undefined ? -1 : 0,
      held: first === undefined ? NOTHING : carriedBy(first, piece.pose, own),
    })),
  ];
  const ends = asked.length - 4;
  const share = first === undefined ? SHARE_OF_FIRST : SHARE_OF_ENDS;
  const wide = forms.length;
  const together = new Float64Array(wide * wide);
  for (let i = 0; i < wide; i += 1) {
    for (let j = i; j < wide; j += 1) {
      const value = noise(of, forms[i] as LinearObservation, forms[j] as LinearObservation);
      together[i * wide + j] = value;
      together[j * wide + i] = value;
    }
  }
  const alone = asked.map(({ index, held }) => covarianceOf(of, [index, held], [index, held]));
  const shared = asked.map(({ index, held }) =>
    forms.map((form) => covarianceOf(of, [form.index, form.held], [index, held])),
  );
  const arc = question.crew.tapes > 1 ? 0 : USUAL_TAPE.scratch.value ** 2;
  const straight = few.map((each) => isStraight(each.of.kind));
  /** Variance of what is asked, by the answers of the three observations; `scratched` is what an arc adds to each tape. */
  const variance = (
    k: number,
    gain: Matrix,
    [i, j, l]: readonly [number, number, number],
    scratched: number,
  ): number => {
    const [a, b, c] = timesMatrix((asked[k] as LinearGap).own, gain);
    const row = shared[k] as readonly number[];
    const n = (p: number, q: number): number => together[p * wide + q] as number;
    return (
      a * a * (n(i, i) + (straight[i] ? scratched : 0)) +
      b * b * (n(j, j) + (straight[j] ? scratched : 0)) +
      c * c * (n(l, l) + (straight[l] ? scratched : 0)) +
      2 * (a * b * n(i, j) + a * c * n(i, l) + b * c * n(j, l)) -
      2 * (a * (row[i] as number) + b * (row[j] as number) + c * (row[l] as number)) +
      (alone[k] as number)
    );
  };
  let best:
    | { readonly at: readonly [number, number, number]; readonly worstGap: Metres; readonly cost: Metres }
    | undefined;
  const directions = forms.map(({ own: [x, y] }) => {
    const size = Math.hypot(x, y);
    return size < 1e-9 ? undefined : { x: x / size, y: y / size };
  });
  const isWeak = (at: readonly [number, number, number]): boolean =>
    !at.some((i, k) =>
      at.slice(k + 1).some((j) => {
        const [a, b] = [directions[i], directions[j]];
        return a !== undefined && b !== undefined && Math.abs(a.x * b.x + a.y * b.y) <= MEETING;
      }),
    );
  const consider = (at: readonly [number, number, number], measured: Metres): void => {
    if (best !== undefined && measured >= best.cost) return;
    const burden = isWeak(at) ? measured + WEAK : measured;
    if (best !== undefined && burden >= best.cost) return;
    const [a, b, c] = at.map((i) => (forms[i] as LinearObservation).own) as unknown as Matrix;
    const gain = inverse([a, b, c]);
    if (gain === undefined) return;
    const scratched = at.filter((i) => straight[i]).length > 1 ? arc : 0;
    let most = 0;
    for (let k = 0; k < ends; k += 1) most = Math.max(most, variance(k, gain, at, scratched));
    const worstGap = Math.sqrt(most);
    if (best !== undefined && burden + GAP * worstGap >= best.cost) return;
    const end = Math.max(
      variance(ends, gain, at, scratched) + variance(ends + 1, gain, at, scratched),
      variance(ends + 2, gain, at, scratched) + variance(ends + 3, gain, at, scratched),
    );
    const cost = burden + GAP * worstGap + share * Math.sqrt(Math.max(0, end));
    if (best === undefined || cost < best.cost - 1e-12) best = { at, worstGap, cost };
  };
  for (let i = 0; i < few.length; i += 1) {
    for (let j = i + 1; j < few.length; j += 1) {
      const two = (few[i] as Weighed).burden + (few[j] as Weighed).burden;
      if (isSmall(piece)) consider([i, j, eye], two);
      else for (let l = j + 1; l < few.length; l += 1) consider([i, j, l], two + (few[l] as Weighed).burden);
    }
  }
  if (best === undefined) return undefined;
  const { at, worstGap, cost } = best;
  const chosen = at.flatMap((i) => few[i] ?? []);
  const observations = chosen.filter((each) => isStraight(each.of.kind)).length > 1 ? chosen.map(withArc(arc)) : chosen;
  const linear = [...observations.map((each) => each.linear), BY_EYE].slice(0, 3);
  const by = solved(of, linear as unknown as Solved['chosen']);
  return by === undefined ? undefined : { observations, solved: by, worstGap, cost };
}

/** A straight tape with the error of an arc, of the given variance, where it meets another. */
function withArc(variance: number): (each: Weighed) => Weighed {
  return (each) => {
    if (!isStraight(each.of.kind)) return each;
    return { ...each, linear: { ...each.linear, sigma: Math.sqrt(each.linear.sigma ** 2 + variance) } };
  };
}

/** The candidates that are combined: of each kind to each piece those that see it most sharply for their burden. */
function sharpest(candidates: readonly Weighed[]): readonly Weighed[] {
  const worth = ({ linear, burden }: Weighed): number => Math.hypot(linear.sigma, 4 * burden);
  const counts = new Map<string, number>();
  return candidates
    .toSorted((a, b) => worth(a) - worth(b))
    .filter(({ of: { kind, grips, constraint } }) => {
      const key = [kind, ...grips.map((grip) => ('wall' in grip ? grip.wall : grip.piece))].join(' ');
      const count = (counts.get(key) ?? 0) + 1;
      counts.set(key, count);
      return constraint !== undefined || count <= (kind === 'between' ? MOST_STRAIGHT : MOST_OF_A_KIND);
    });
}
