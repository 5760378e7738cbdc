import type { Grip } from '../../constraints/constraint.ts';
import type { PlacedPiece } from '../../course/placed.ts';
import { type ResolvedConstraint, resolvedConstraints } from '../../course/resolved-constraints.ts';
import type { Point } from '../../plane/point.ts';
import type { Gap } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import { placeOn, sideOf } from '../observables.ts';
import type { Observable } from '../setout.ts';

/** A gap whose error counts. */
export interface MeasuredGap {
  readonly of: Observable;
  readonly keys: readonly [string, string];
  readonly at: readonly [number, number];
  readonly isRidden: boolean;
}

/** Gaps at places nearer to each other than this are one, as a share of the pole. */
const SAME_PLACE = 0.02;

/** Where the straight through two points meets the middle line of a piece, as a fraction along it; undefined beside it. */
function fractionOn({ pose, figure }: PlacedPiece, [a, b]: readonly [Point, Point]): number | undefined {
  const [ux, uy] = [Math.cos(pose.angle), Math.sin(pose.angle)];
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const across = ux * dy - uy * dx;
  if (Math.abs(across) < 1e-9) return undefined;
  const t = ((a.x - pose.x) * dy - (a.y - pose.y) * dx) / across;
  const at = t / figure.length + 0.5;
  return at >= 0 && at <= 1 ? at : undefined;
}

function ridden(gap: Gap, pieces: ReadonlyMap<string, PlacedPiece>): readonly MeasuredGap[] {
  const [first, second] = gap.keys.map((key) => pieces.get(key));
  if (first === undefined || second === undefined) return [];
  const at = [fractionOn(first, gap.ends), fractionOn(second, gap.ends)];
  if (at[0] === undefined || at[1] === undefined) return [];
  return [measuredGap([first, at[0]], [second, at[1]], true)];
}

function measuredGap(
  [first, a]: readonly [PlacedPiece, number],
  [second, b]: readonly [PlacedPiece, number],
  isRidden: boolean,
): MeasuredGap {
  const grips = [
    { piece: first.key, at: a },
    { piece: second.key, at: b },
  ] as const;
  const side = sideOf(first, placeOn(second, b));
  return { of: { kind: 'gap', grips, side }, keys: [first.key, second.key], at: [a, b], isRidden };
}

function held({ kind, grips }: ResolvedConstraint, pieces: ReadonlyMap<string, PlacedPiece>): readonly MeasuredGap[] {
  if (kind.observed === undefined || kind.unit !== 'm') return [];
  return kind.observed(grips).flatMap(({ kind: how, grips: [first, second] }) => {
    if (how !== 'gap' || 'wall' in first || 'wall' in second) return [];
    const lying = ([first, second] as readonly Extract<Grip, { piece: string }>[]).map((grip) =>
      pieces.get(grip.piece),
    );
    if (lying[0] === undefined || lying[1] === undefined) return [];
    return [measuredGap([lying[0], first.at ?? 0.5], [lying[1], second.at ?? 0.5], false)];
  });
}

function isSame(a: MeasuredGap, b: MeasuredGap): boolean {
  const isTurned = a.keys[0] !== b.keys[0];
  const [first, second] = isTurned ? [1, 0] : [0, 1];
  return (
    a.keys[0] === b.keys[first as 0 | 1] &&
    a.keys[1] === b.keys[second as 0 | 1] &&
    Math.abs(a.at[0] - b.at[first as 0 | 1]) < SAME_PLACE &&
    Math.abs(a.at[1] - b.at[second as 0 | 1]) < SAME_PLACE
  );
}

/** The gaps of a layout, each once: those on the line of travel first, then what constraints hold. */
export function measuredGaps({ line, layout, pieces }: Survey): readonly MeasuredGap[] {
  const byKey = new Map(pieces.map((piece) => [piece.key, piece]));
  const all = [
    ...line.gaps.flatMap((gap) => ridden(gap, byKey)),
    ...resolvedConstraints(layout).flatMap((each) => held(each, byKey)),
  ];
  return all.filter((each, i) => !all.slice(0, i).some((before) => isSame(before, each)));
}
