import type { PlacedObstacle } from '../../course/placed.ts';
import { pairCache } from '../../memo/by-identity.ts';
import { type Path, poseOn } from '../../plane/path.ts';
import { distance, type Point } from '../../plane/point.ts';
import type { Pose } from '../../plane/pose.ts';
import { edges } from '../../plane/ring.ts';
import { segmentIntersection } from '../../plane/segment.ts';
import type { Survey } from '../../survey.ts';
import { type MeasuredSize, piecesBoundBy, sizeCheck } from '../findings/dimension.ts';

/** How finely the lane is measured along the line, metres. */
const STEP = 0.25;
/** A pole further off than this is not a wall of the lane, metres. */
const REACH = 3;

interface Face {
  readonly far: number;
  readonly key: string;
}

/** The nearest face of the obstacle straight to one side of the pose. */
function faceBeside(obstacle: PlacedObstacle, at: Pose, side: 1 | -1): Face | undefined {
  const end: Point = { x: at.x - side * REACH * Math.sin(at.angle), y: at.y + side * REACH * Math.cos(at.angle) };
  let nearest: Face | undefined;
  for (const { key, footprint } of obstacle.pieces) {
    for (const edge of edges(footprint)) {
      const met = segmentIntersection([at, end], edge);
      const far = met === undefined ? Number.POSITIVE_INFINITY : distance(at, met);
      if (far < (nearest?.far ?? Number.POSITIVE_INFINITY)) nearest = { far, key };
    }
  }
  return nearest;
}

/** The width square to the line wherever there is a pole on both sides of it. */
const widthCache = pairCache<Path, PlacedObstacle, readonly MeasuredSize[]>();

function widthsOn(obstacle: PlacedObstacle, path: Path): readonly MeasuredSize[] {
  return path.flatMap((stretch) => {
    const steps = Math.max(1, Math.ceil(stretch.length / STEP));
    return Array.from({ length: steps + 1 }, (_, i) => poseOn(stretch, (stretch.length * i) / steps)).flatMap((at) => {
      const left = faceBeside(obstacle, at, 1);
      const right = faceBeside(obstacle, at, -1);
      if (left === undefined || right === undefined) return [];
      return [{ value: left.far + right.far, at: { x: at.x, y: at.y }, keys: [left.key, right.key] }];
    });
  });
}

/** Whether some pole of the obstacle is raised. */
export function isRaised(obstacle: PlacedObstacle): boolean {
  return obstacle.pieces.some(
    ({ piece }) => Number(piece.values.raisedStart ?? 0) + Number(piece.values.raisedEnd ?? 0) > 0,
  );
}

/** The widths of the lane that the horse backs through. */
function backWidths(obstacle: PlacedObstacle, survey: Survey): readonly MeasuredSize[] {
  const { legs } = survey.layout.ride;
  return survey.line.elements
    .filter(
      ({ leg, move, part }) => move === 'back' && part === 'obstacle' && legs[leg]?.obstacle === obstacle.obstacle.id,
    )
    .flatMap(({ path }) => widthCache(path, obstacle, { because: '', work: () => widthsOn(obstacle, path) }));
}

/** Whether a barrel stands at one side of the lane there: barrels ask for more width. */
function isAtBarrel(obstacle: PlacedObstacle, { keys }: MeasuredSize): boolean {
  return piecesBoundBy(obstacle, 'back.barrels.width').some(({ key }) => keys.includes(key));
}

export const backWidth = sizeCheck({
  id: 'back-width',
  says: 'A back-through on the ground is wide enough.',
  because: 'A backing horse cannot see its feet: in a lane that is too narrow it steps on the poles.',
  weight: 'must',
  limit: 'back.width',
  what: 'the lane of',
  param: 'width',
  sizes: (obstacle, survey) =>
    isRaised(obstacle) ? [] : backWidths(obstacle, survey).filter((size) => !isAtBarrel(obstacle, size)),
});

export const backBarrelWidth = sizeCheck({
  ...backWidth,
  id: 'back-barrel-width',
  says: 'A back-through between barrels is wider than one between poles.',
  because: 'A rider’s knee and the horse’s hip meet a barrel where a hoof would meet a pole.',
  limit: 'back.barrels.width',
  // Building the lane again would replace its barrels by poles, so barrels are moved one by one.
  what: 'the lane of',
  sizes: (obstacle, survey) => backWidths(obstacle, survey).filter((size) => isAtBarrel(obstacle, size)),
});

export const backRaisedWidth = sizeCheck({
  ...backWidth,
  id: 'back-raised-width',
  says: 'A raised back-through is wider than one on the ground.',
  limit: 'back.raised.width',
  what: 'the lane of',
  param: 'width',
  sizes: (obstacle, survey) => (isRaised(obstacle) ? backWidths(obstacle, survey) : []),
});
