import type { PlacedPiece } from '../../course/placed.ts';
import type { Metres } from '../../measure/quantity.ts';
import { distance } from '../../plane/point.ts';
import { type CandidateQuestion, candidatesFor, type Weighed } from './candidates.ts';
import { type Determined, determined } from './determine.ts';
import { wallCandidates } from './first-piece.ts';
import type { MeasuredGap } from './measured-gaps.ts';
import { type Covariance, extended, NOTHING_LAID } from './placement.ts';

/** Pieces in the order in which they are laid, each with how it is determined. */
export interface LaidOrder {
  readonly pieces: readonly PlacedPiece[];
  readonly by: readonly Determined[];
  /** On the ground, with the error of the first piece. */
  readonly covariance: Covariance;
  readonly worstGap: Metres;
  readonly walked: Metres;
  readonly cost: Metres;
}

/** All that the choice of an order asks. */
export interface OrderQuestion extends CandidateQuestion {
  readonly gaps: readonly MeasuredGap[];
}

/** Worst gaps that differ by less count as the same, metres: the crew then walks less. */
const ALIKE = 0.0005;

/** How many orders are kept at each length of the beam. */
const BEAM = 8;
/** What a metre of walking between two pieces counts, metres of standard error: it breaks ties. Estimate. */
const WALK = 0.00005;
/** How much the mean of all pieces counts beside the worst gap. Estimate. */
const MEAN = 0.25;

function started(piece: PlacedPiece, question: OrderQuestion): LaidOrder | undefined {
  const { ground, crew } = question;
  const by = determined(piece, wallCandidates(piece, ground, crew), NOTHING_LAID, {
    ground,
    crew,
    gaps: [],
    indices: new Map(),
  });
  if (by === undefined) return undefined;
  return {
    pieces: [piece],
    by: [by],
    covariance: extended(NOTHING_LAID, by.solved),
    worstGap: 0,
    walked: 0,
    cost: by.cost,
  };
}

/** What can be observed when the walls are asked as well: two markers have no line that the next could be put on. */
export function withWalls(
  piece: PlacedPiece,
  laid: readonly PlacedPiece[],
  question: OrderQuestion,
): readonly Weighed[] {
  return [...candidatesFor(piece, laid, question), ...wallCandidates(piece, question.ground, question.crew)];
}

/** The order with one more piece; undefined when it cannot be determined from what lies. */
function laidNext(order: LaidOrder, piece: PlacedPiece, question: OrderQuestion): LaidOrder | undefined {
  const { ground, crew, gaps } = question;
  const indices = new Map(order.pieces.map(({ key }, i) => [key, i]));
  const asked = { ground, crew, gaps, indices, first: order.pieces[0] as PlacedPiece };
  const { covariance } = order;
  const by =
    determined(piece, candidatesFor(piece, order.pieces, question), covariance, asked) ??
    determined(piece, withWalls(piece, order.pieces, question), covariance, asked);
  if (by === undefined) return undefined;
  const last = order.pieces.at(-1) as PlacedPiece;
  const walk = distance(last.pose, piece.pose);
  return {
    pieces: [...order.pieces, piece],
    by: [...order.by, by],
    covariance: extended(order.covariance, by.solved),
    worstGap: Math.max(order.worstGap, by.worstGap),
    walked: order.walked + walk,
    cost: order.cost + by.cost + WALK * walk,
  };
}

/** What orders are ranked by: the worst gap, then the mean of what each piece costs. */
function rank({ worstGap, cost, pieces }: LaidOrder): number {
  return worstGap + (MEAN * cost) / pieces.length;
}

/** The pieces that may be laid next: those that a constraint or a gap ties to one that lies, else any that is left. */
function nextPieces(
  order: LaidOrder,
  pieces: readonly PlacedPiece[],
  { constraints, gaps }: OrderQuestion,
): readonly PlacedPiece[] {
  const laid = new Set(order.pieces.map(({ key }) => key));
  const left = pieces.filter(({ key }) => !laid.has(key));
  const ties = [
    ...constraints.map(({ grips }) => grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : []))),
    ...gaps.map(({ keys }) => keys),
  ].filter((keys) => keys.some((key) => laid.has(key)));
  const tied = left.filter(({ key }) => ties.some((keys) => keys.includes(key)));
  return tied.length > 0 ? tied : left;
}

/** Lays the pieces in one given order; undefined when that is not possible. */
export function inOrder(pieces: readonly PlacedPiece[], question: OrderQuestion): LaidOrder | undefined {
  const [first, ...others] = pieces;
  if (first === undefined) return undefined;
  return others.reduce<LaidOrder | undefined>(
    (order, piece) => (order === undefined ? undefined : laidNext(order, piece, question)),
    started(first, question),
  );
}

/**
 * The best order that a beam search finds: from each piece as the first (a fixed one, where there is one), always the piece
 * that is most sure next. The order of drawing is asked as well. Every piece can be laid from any other, so an order always exists.
 */
export function bestOrder(pieces: readonly PlacedPiece[], question: OrderQuestion): LaidOrder {
  const fixed = pieces.filter(({ piece }) => piece.fixed === true);
  let beam = (fixed.length > 0 ? fixed : pieces).flatMap((piece) => started(piece, question) ?? []);
  for (let count = 1; count < pieces.length; count += 1) {
    const seen = new Set<string>();
    const next = beam.flatMap((order) =>
      nextPieces(order, pieces, question).flatMap((piece) => laidNext(order, piece, question) ?? []),
    );
    beam = next
      .toSorted((a, b) => rank(a) - rank(b))
      .filter((order) => {
        const set = order.pieces
          .map(({ key }) => key)
          .toSorted()
          .join(' ');
        if (seen.has(set)) return false;
        seen.add(set);
        return true;
      })
      .slice(0, BEAM);
  }
  const drawn = fixed.length === 0 ? inOrder(pieces, question) : undefined;
  const all = drawn === undefined ? beam : [...beam, drawn];
  const worst = (order: LaidOrder): number => Math.round(order.worstGap / ALIKE);
  const [best] = all.toSorted((a, b) => worst(a) - worst(b) || rank(a) - rank(b));
  if (best === undefined) throw new Error('set-out: no order determines every piece');
  return best;
}
