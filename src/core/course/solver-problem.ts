import type { GrippedPose } from '../constraints/constraint.ts';
import { type Gradient, grippedWall } from '../constraints/grip.ts';
import { constraintResiduals } from '../constraints/residuals.ts';
import type { Metres } from '../measure/quantity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { ORIGIN, type Pose } from '../plane/pose.ts';
import type { Body, ConstraintEquations, Problem, Residual } from '../solve/problem.ts';
import type { Arena, Layout } from './course.ts';
import { type PlacedPiece, placedObstacle } from './placed.ts';
import {
  type GripSize,
  gripSizes,
  isDriving,
  pinnedPieces,
  placedPieces,
  type ResolvedConstraint,
  resolvedConstraints,
  wallKey,
} from './resolved-constraints.ts';

/** A layout's constraints, as the solver sees them. */
export interface LayoutProblem {
  readonly problem: Problem;
  readonly constraints: ReadonlyMap<string, ResolvedConstraint>;
  readonly pieces: ReadonlyMap<string, PlacedPiece>;
  /** Obstacles that are one body under their own id; the pieces of the others are bodies of their own. */
  readonly whole: ReadonlySet<string>;
}

/** The least radius of gyration of a body, metres: without it a small marker would turn where a pole should. */
const MIN_RADIUS_OF_GYRATION: Metres = 0.5;

/** Where a gripped piece is: on which body, and where in it. */
interface BodyAnchor {
  readonly body: string;
  readonly local: Pose;
}

type LentGrip = { pose: { x: number; y: number; angle: number } } & GripSize;

/** Where a body is, where what sits on it is: written into `pose`. */
function writePose(body: Pose, local: Pose, pose: LentGrip['pose']): void {
  const c = Math.cos(body.angle);
  const s = Math.sin(body.angle);
  pose.x = body.x + c * local.x - s * local.y;
  pose.y = body.y + s * local.x + c * local.y;
  pose.angle = body.angle + local.angle;
}

/** Turning the body moves what is on it about the body's origin. */
function aboutBody([gx, gy, gt]: Gradient, body: Pose, there: Pose): Gradient {
  return [gx, gy, gt + gy * (there.x - body.x) - gx * (there.y - body.y)];
}

function equationsOf(
  resolved: ResolvedConstraint,
  sizes: readonly GripSize[],
  anchors: readonly BodyAnchor[],
): ConstraintEquations {
  const { constraint, kind, key } = resolved;
  const { hold = 0, side = 1 } = constraint;
  // Made once and written over: the equations are asked for thousands of times in a drag.
  const gripped = sizes.map(
    ({ length, width, at }): LentGrip => ({ length, width, at, pose: { x: 0, y: 0, angle: 0 } }),
  );
  const turned = anchors.some(({ local }) => local !== ORIGIN);
  const residuals = (poses: readonly Pose[]): readonly Residual[] => {
    gripped.forEach((each, i) => {
      const body = poses[i] as Pose;
      const local = (anchors[i] as BodyAnchor).local;
      if (local === ORIGIN) each.pose = body;
      else writePose(body, local, each.pose);
    });
    const plain = constraintResiduals(kind, gripped as readonly GrippedPose[], { hold, side });
    if (!turned) return plain;
    return plain.map(({ value, gradient }) => ({
      value,
      gradient: gradient.map((slope, i) => {
        const local = (anchors[i] as BodyAnchor).local;
        return local === ORIGIN ? slope : aboutBody(slope, poses[i] as Pose, (gripped[i] as LentGrip).pose);
      }),
    }));
  };
  return { id: key, bodies: anchors.map(({ body }) => body), residuals };
}

/** The radius of gyration of a piece about its middle: the root mean square distance of its points, metres. */
function pieceRadiusOfGyration({ figure }: PlacedPiece): Metres {
  return Math.sqrt((figure.length ** 2 + figure.width ** 2) / 12);
}

/** The same for a whole obstacle about its frame's origin. */
function obstacleRadiusOfGyration(obstacle: Obstacle): Metres {
  const { pieces } = placedObstacle(obstacle);
  const sum = pieces.reduce((total, piece) => {
    const { x, y } = piece.piece.pose;
    return total + x * x + y * y + pieceRadiusOfGyration(piece) ** 2;
  }, 0);
  return Math.sqrt(sum / Math.max(1, pieces.length));
}

/**
 * The layout as bodies and constraint equations. Walls never move. A rigid obstacle is one body with its frame, as
 * heavy as all its pieces (infinitely heavy when one of them is fixed), and a grip on one of its pieces is a grip on
 * that body. Every piece of the other obstacles is a body, all equally heavy; a fixed one is infinitely heavy.
 * Constraints inside a rigid obstacle cannot change and give no equations.
 */
export function layoutProblem(layout: Layout, arena: Arena, whole: ReadonlySet<string> = new Set()): LayoutProblem {
  const pieces = placedPieces(layout);
  const pinned = pinnedPieces(layout);
  const weight = (isPinned: boolean, count: number) => (isPinned ? Number.POSITIVE_INFINITY : count);
  const bodies = layout.obstacles.flatMap((obstacle): Body[] => {
    const own = placedObstacle(obstacle).pieces;
    if (whole.has(obstacle.id)) {
      const isPinned = own.some(({ key }) => pinned.has(key));
      const radiusOfGyration = Math.max(MIN_RADIUS_OF_GYRATION, obstacleRadiusOfGyration(obstacle));
      return [{ id: obstacle.id, pose: obstacle.pose, weight: weight(isPinned, own.length), radiusOfGyration }];
    }
    return own.map((piece) => ({
      id: piece.key,
      pose: piece.pose,
      weight: weight(pinned.has(piece.key), 1),
      radiusOfGyration: Math.max(MIN_RADIUS_OF_GYRATION, pieceRadiusOfGyration(piece)),
    }));
  });
  const walls = (['south', 'east', 'north', 'west'] as const).map((wall): Body => {
    return {
      id: wallKey(wall),
      pose: grippedWall(arena, wall).pose,
      weight: Number.POSITIVE_INFINITY,
      radiusOfGyration: 1,
    };
  });
  const all = resolvedConstraints(layout).filter(isDriving);
  const equations = all.flatMap((resolved): ConstraintEquations[] => {
    const sizes = gripSizes(resolved, arena, pieces);
    if (sizes === undefined || resolved.kind.pins) return [];
    const anchors = resolved.grips.map((grip): BodyAnchor => {
      if ('wall' in grip) return { body: wallKey(grip.wall), local: ORIGIN };
      const placed = pieces.get(grip.piece);
      if (placed === undefined || !whole.has(placed.obstacle)) return { body: grip.piece, local: ORIGIN };
      return { body: placed.obstacle, local: placed.piece.pose };
    });
    const [first] = anchors;
    if (first !== undefined && whole.has(first.body) && anchors.every(({ body }) => body === first.body)) return [];
    return [equationsOf(resolved, sizes, anchors)];
  });
  return {
    problem: { bodies: [...bodies, ...walls], constraints: equations },
    constraints: new Map(all.map((resolved) => [resolved.key, resolved])),
    pieces,
    whole,
  };
}
