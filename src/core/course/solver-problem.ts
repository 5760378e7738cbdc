import type { Held } from '../constraints/constraint.ts';
import { heldWall, type Slope } from '../constraints/grip.ts';
import type { Metres } from '../measure/quantity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { ORIGIN, type Pose } from '../plane/pose.ts';
import type { Body, Problem, Row, Tie } from '../solve/problem.ts';
import type { Arena, Layout } from './course.ts';
import { type PlacedPiece, placedObstacle } from './placed.ts';
import {
  fixedPieces,
  type Holding,
  holdingsOf,
  holds,
  piecesOf,
  type Size,
  sizesOf,
  wallKey,
} from './resolved-constraints.ts';

/** What a layout holds, as the solver sees it. */
export interface TiedLayout {
  readonly problem: Problem;
  readonly holdings: ReadonlyMap<string, Holding>;
  readonly pieces: ReadonlyMap<string, PlacedPiece>;
  /** Obstacles that are one body under their own id; the pieces of the others are bodies of their own. */
  readonly whole: ReadonlySet<string>;
}

/** Small things count as this long a lever, or a marker that is turned would be no match for what hangs on it. */
const LEAST_LEVER: Metres = 0.5;

/** Where a gripped piece is: on which body, and where in it. */
interface Seat {
  readonly body: string;
  readonly local: Pose;
}

type Lent = { pose: { x: number; y: number; angle: number } } & Size;

/** Where a body is, where what sits on it is: written into `pose`. */
function seat(body: Pose, local: Pose, pose: Lent['pose']): void {
  const c = Math.cos(body.angle);
  const s = Math.sin(body.angle);
  pose.x = body.x + c * local.x - s * local.y;
  pose.y = body.y + s * local.x + c * local.y;
  pose.angle = body.angle + local.angle;
}

/** Turning the body swings what sits on it about the body's origin. */
function swung([gx, gy, gt]: Slope, body: Pose, there: Pose): Slope {
  return [gx, gy, gt + gy * (there.x - body.x) - gx * (there.y - body.y)];
}

function tieOf(holding: Holding, sizes: readonly Size[], seats: readonly Seat[]): Tie {
  const { constraint, kind, key } = holding;
  const { hold = 0, side = 1 } = constraint;
  // Made once and written over: the equations are asked for thousands of times in a drag.
  const held = sizes.map(({ length, width, at }): Lent => ({ length, width, at, pose: { x: 0, y: 0, angle: 0 } }));
  const turned = seats.some(({ local }) => local !== ORIGIN);
  const rows = (poses: readonly Pose[]): readonly Row[] => {
    held.forEach((each, i) => {
      const body = poses[i] as Pose;
      const local = (seats[i] as Seat).local;
      if (local === ORIGIN) each.pose = body;
      else seat(body, local, each.pose);
    });
    const plain = kind.residuals(held as readonly Held[], hold, side);
    if (!turned) return plain;
    return plain.map(({ value, gradient }) => ({
      value,
      gradient: gradient.map((slope, i) => {
        const local = (seats[i] as Seat).local;
        return local === ORIGIN ? slope : swung(slope, poses[i] as Pose, (held[i] as Lent).pose);
      }),
    }));
  };
  return { id: key, bodies: seats.map(({ body }) => body), rows };
}

/** Root mean square of how far the points of a piece go when it turns by a radian about its middle. */
function spread({ figure }: PlacedPiece): Metres {
  return Math.sqrt((figure.length ** 2 + figure.width ** 2) / 12);
}

/** The same for a whole obstacle about its frame's origin. */
function reach(obstacle: Obstacle): Metres {
  const { pieces } = placedObstacle(obstacle);
  const sum = pieces.reduce((total, piece) => {
    const { x, y } = piece.piece.pose;
    return total + x * x + y * y + spread(piece) ** 2;
  }, 0);
  return Math.sqrt(sum / Math.max(1, pieces.length));
}

/**
 * The layout as bodies and ties: the walls never move; an obstacle that is whole is one body, as heavy as its pieces, that
 * moves with its frame (never, when one of its pieces is fixed), and a grip on one of its pieces is a grip on that body; of
 * the others every piece is a body (heavy and light alike; a fixed one never moves). What a whole obstacle holds
 * among its own pieces cannot change and makes no tie.
 */
export function tied(layout: Layout, arena: Arena, whole: ReadonlySet<string> = new Set()): TiedLayout {
  const pieces = piecesOf(layout);
  const fixed = fixedPieces(layout);
  const weight = (isFixed: boolean, count: number) => (isFixed ? Number.POSITIVE_INFINITY : count);
  const bodies = layout.obstacles.flatMap((obstacle): Body[] => {
    const own = placedObstacle(obstacle).pieces;
    if (whole.has(obstacle.id)) {
      const isFixed = own.some(({ key }) => fixed.has(key));
      const lever = Math.max(LEAST_LEVER, reach(obstacle));
      return [{ id: obstacle.id, pose: obstacle.pose, weight: weight(isFixed, own.length), lever }];
    }
    return own.map((piece) => ({
      id: piece.key,
      pose: piece.pose,
      weight: weight(fixed.has(piece.key), 1),
      lever: Math.max(LEAST_LEVER, spread(piece)),
    }));
  });
  const walls = (['south', 'east', 'north', 'west'] as const).map((wall): Body => {
    return { id: wallKey(wall), pose: heldWall(arena, wall).pose, weight: Number.POSITIVE_INFINITY, lever: 1 };
  });
  const all = holdingsOf(layout).filter(holds);
  const ties = all.flatMap((holding): Tie[] => {
    const sizes = sizesOf(holding, arena, pieces);
    if (sizes === undefined || holding.kind.id === 'fixed') return [];
    const seats = holding.grips.map((grip): Seat => {
      if ('wall' in grip) return { body: wallKey(grip.wall), local: ORIGIN };
      const placed = pieces.get(grip.piece);
      if (placed === undefined || !whole.has(placed.obstacle)) return { body: grip.piece, local: ORIGIN };
      return { body: placed.obstacle, local: placed.piece.pose };
    });
    const [first] = seats;
    if (first !== undefined && whole.has(first.body) && seats.every(({ body }) => body === first.body)) return [];
    return [tieOf(holding, sizes, seats)];
  });
  return {
    problem: { bodies: [...bodies, ...walls], ties },
    holdings: new Map(all.map((holding) => [holding.key, holding])),
    pieces,
    whole,
  };
}
