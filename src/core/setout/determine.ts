import type { PlacedPiece } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import type { Weighed } from './candidates.ts';
import { type Ground, observedOn } from './ground.ts';
import type { MeasuredGap } from './measured-gaps.ts';
import { isSmall } from './observables.ts';
import {
  type Covariance,
  jointVariance,
  type LinearObservation,
  ownVariance,
  type Solved,
  solved,
} from './placement.ts';
import { USUAL_TAPE } from './tape-errors.ts';

/** How one piece is determined. */
export interface Determined {
  readonly observations: readonly Weighed[];
  readonly solved: Solved;
  /** Largest standard error of a gap between this piece and one that lies; 0 when there is none. */
  readonly worstGap: Metres;
  /** What is minimised, metres: `worstGap`, a share of where its ends lie, and the burden of measuring so. */
  readonly cost: Metres;
}

/** The heading of a small thing is set by eye: it counts as an observation of its own. */
const BY_EYE: LinearObservation = { own: [0, 0, 1], index: -1, held: [0, 0, 0], sigma: USUAL_TAPE.byEye.value };

/** How much an error of an end that spoils no gap counts. Estimate. */
const SHARE_OF_ENDS = 0.15;
/** No more candidates than this are combined: those that see the piece most sharply for their burden. */
const MOST_COMBINED = 14;

/** The gaps between a piece and pieces that lie, as gradients. */
interface LinearGap {
  readonly own: readonly [number, number, number];
  readonly index: number;
  readonly held: readonly [number, number, number];
}

function linearGaps(
  ground: Ground,
  piece: PlacedPiece,
  gaps: readonly MeasuredGap[],
  indices: ReadonlyMap<string, number>,
): readonly LinearGap[] {
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

function endError(piece: PlacedPiece, by: Solved): Metres {
  const [ax = 0, ay = 0, bx = 0, by2 = 0] = endDirections(piece).map((direction) => ownVariance(by, direction));
  return Math.sqrt(Math.max(ax + ay, bx + by2));
}

/**
 * The best observations for a piece among the candidates: the three (of a small thing two) that keep its gaps, then its ends,
 * most sure. Undefined when no three determine it.
 */
export function determined(
  piece: PlacedPiece,
  candidates: readonly Weighed[],
  of: Covariance,
  {
    ground,
    gaps,
    indices,
  }: { readonly ground: Ground; readonly gaps: readonly MeasuredGap[]; readonly indices: ReadonlyMap<string, number> },
): Determined | undefined {
  const worth = ({ linear, burden }: Weighed): number => Math.hypot(linear.sigma, 4 * burden);
  const few = candidates.toSorted((a, b) => worth(a) - worth(b)).slice(0, MOST_COMBINED);
  const linear = linearGaps(ground, piece, gaps, indices);
  let best: Determined | undefined;
  const consider = (observations: readonly Weighed[], chosen: Solved['chosen']): void => {
    const burden = observations.reduce((sum, each) => sum + each.burden, 0);
    if (best !== undefined && burden >= best.cost) return;
    const by = solved(of, chosen);
    if (by === undefined) return;
    const worstGap = Math.sqrt(
      linear.reduce((most, gap) => Math.max(most, jointVariance(of, by, gap.own, [gap.index, gap.held])), 0),
    );
    const cost = burden + worstGap + SHARE_OF_ENDS * endError(piece, by);
    if (best === undefined || cost < best.cost - 1e-12) best = { observations, solved: by, worstGap, cost };
  };
  for (const [i, a] of few.entries()) {
    for (const [j, b] of few.slice(i + 1).entries()) {
      if (isSmall(piece)) consider([a, b], [a.linear, b.linear, BY_EYE]);
      else for (const c of few.slice(i + j + 2)) consider([a, b, c], [a.linear, b.linear, c.linear]);
    }
  }
  return best;
}
