import type { Constraint, ConstraintKind, Grip, Held, Wall } from '../constraints/constraint.ts';
import { constraintKind } from '../constraints/constraints.ts';
import { heldWall } from '../constraints/grip.ts';
import { printAngle } from '../measure/angle.ts';
import { printLength } from '../measure/length.ts';
import type { LengthUnit, Metres } from '../measure/quantity.ts';
import type { Pose } from '../plane/pose.ts';
import type { Body, Problem, Tie } from '../solve/problem.ts';
import type { Arena, Layout } from './course.ts';
import { obstacleOf, pieceOf } from './keys.ts';
import { type PlacedPiece, pieceKey, placedObstacle } from './placed.ts';

/** A constraint that holds, with its grips as keys of the layout. `key` is `obstacle/constraint`, or the id in a layout. */
export interface Holding {
  readonly key: string;
  readonly constraint: Constraint;
  readonly kind: ConstraintKind;
  readonly grips: readonly Grip[];
}

/** What a layout holds, as the solver sees it. */
export interface TiedLayout {
  readonly problem: Problem;
  readonly holdings: ReadonlyMap<string, Holding>;
  readonly pieces: ReadonlyMap<string, PlacedPiece>;
}

/** Small things count as this long a lever, or a marker that is turned would be no match for what hangs on it. */
const LEAST_LEVER: Metres = 0.5;

/** No distance to hold: it only measures. Kinds without a number hold by being there. */
function holds(constraint: Constraint, kind: ConstraintKind): boolean {
  return constraint.hold !== undefined || kind.unit === 'none';
}

function fits(kind: ConstraintKind, grips: readonly Grip[]): boolean {
  return (
    grips.length === kind.takes.length &&
    grips.every((grip, i) => ('wall' in grip ? 'wall' : 'piece') === kind.takes[i])
  );
}

/** The constraints that hold, inside obstacles first. One of an unknown kind, or that grips what is not there, is left out. */
export function holdingsOf(layout: Layout): readonly Holding[] {
  const inside = layout.obstacles.flatMap((obstacle) =>
    obstacle.constraints.map((constraint) => ({
      key: pieceKey(obstacle.id, constraint.id),
      constraint,
      grips: constraint.grips.map((grip) =>
        'wall' in grip ? grip : { ...grip, piece: pieceKey(obstacle.id, grip.piece) },
      ),
    })),
  );
  const across = layout.constraints.map((constraint) => ({ key: constraint.id, constraint, grips: constraint.grips }));
  return [...inside, ...across].flatMap((each) => {
    const kind = constraintKind(each.constraint.kind);
    if (kind === undefined || !fits(kind, each.grips) || !holds(each.constraint, kind)) return [];
    return [{ ...each, kind }];
  });
}

const wallKey = (wall: Wall): string => `wall ${wall}`;
const gripKey = (grip: Grip): string => ('wall' in grip ? wallKey(grip.wall) : grip.piece);

/** The pieces that are not to move: marked as fixed, or held by a `fixed` constraint. */
function stillPieces(pieces: Iterable<PlacedPiece>, holdings: readonly Holding[]): ReadonlySet<string> {
  const marked = [...pieces].filter(({ piece }) => piece.fixed === true).map(({ key }) => key);
  const held = holdings.filter(({ kind }) => kind.id === 'fixed').flatMap(({ grips }) => grips.map(gripKey));
  return new Set([...marked, ...held]);
}

function tieOf(holding: Holding, arena: Arena, pieces: ReadonlyMap<string, PlacedPiece>): Tie | undefined {
  const { constraint, kind, key } = holding;
  const rest = holding.grips.map((grip): Omit<Held, 'pose'> | undefined => {
    if ('wall' in grip) return heldWall(arena, grip.wall);
    const figure = pieces.get(grip.piece)?.figure;
    return figure === undefined ? undefined : { length: figure.length, width: figure.width, at: grip.at ?? 0.5 };
  });
  const sizes = rest.flatMap((size) => (size === undefined ? [] : [size]));
  if (sizes.length < rest.length) return undefined;
  const { hold = 0, side = 1 } = constraint;
  return {
    id: key,
    bodies: holding.grips.map(gripKey),
    rows: (poses: readonly Pose[]) =>
      kind.residuals(
        sizes.map((size, i) => ({ length: size.length, width: size.width, at: size.at, pose: poses[i] as Pose })),
        hold,
        side,
      ),
  };
}

/**
 * Every piece of the layout as a body (heavy and light alike; a fixed one never moves), the walls as bodies that never
 * move, and every constraint that holds as a tie. `wishes` are ground poses of pieces.
 */
export function tied(layout: Layout, arena: Arena, wishes: ReadonlyMap<string, Pose>): TiedLayout {
  const pieces = new Map(
    layout.obstacles.flatMap((obstacle) => placedObstacle(obstacle).pieces.map((piece) => [piece.key, piece] as const)),
  );
  const all = holdingsOf(layout);
  const still = stillPieces(pieces.values(), all);
  const ties = all.flatMap((holding) => tieOf(holding, arena, pieces) ?? []);
  const bodies = [...pieces.values()].map(({ key, pose, figure }): Body => {
    const wish = wishes.get(key);
    return {
      id: key,
      pose,
      weight: still.has(key) ? Number.POSITIVE_INFINITY : 1,
      // Root mean square of how far its points go when it turns by a radian.
      lever: Math.max(LEAST_LEVER, Math.sqrt((figure.length ** 2 + figure.width ** 2) / 12)),
      ...(wish === undefined ? {} : { wish }),
    };
  });
  const walls = (['south', 'east', 'north', 'west'] as const).map((wall): Body => {
    return { id: wallKey(wall), pose: heldWall(arena, wall).pose, weight: Number.POSITIVE_INFINITY, lever: 1 };
  });
  return {
    problem: { bodies: [...bodies, ...walls], ties },
    holdings: new Map(all.map((holding) => [holding.key, holding])),
    pieces,
  };
}

/** `pole 2 of fan 1`, or by the obstacle's own name; `the south wall`. */
function gripName(grip: Grip, layout: Layout): string {
  if ('wall' in grip) return `the ${grip.wall} wall`;
  const owner = layout.obstacles.find(({ id }) => id === obstacleOf(grip.piece));
  const piece = (pieceOf(grip.piece) ?? grip.piece).replaceAll('-', ' ');
  return `${piece} of ${owner?.name ?? (owner?.id ?? obstacleOf(grip.piece)).replaceAll('-', ' ')}`;
}

/** What a constraint holds, in one sentence, with its value in the course's unit. */
export function holdingSentence(holding: Holding, layout: Layout, unit: LengthUnit): string {
  const { constraint, kind, grips } = holding;
  const hold = constraint.hold ?? 0;
  const value = kind.unit === 'm' ? printLength(hold, unit) : kind.unit === 'rad' ? printAngle(hold) : '';
  const says = kind.sentence(
    grips.map((grip) => gripName(grip, layout)),
    value,
  );
  return says.charAt(0).toUpperCase() + says.slice(1);
}
