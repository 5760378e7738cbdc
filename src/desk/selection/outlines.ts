import type { PlacedObstacle, PlacedPiece } from '../../core/course/placed.ts';
import { memoizeByIdentity } from '../../core/memo/by-identity.ts';
import { compose, type Pose, toLocal, toWorld } from '../../core/plane/pose.ts';
import { type Bounds, type Ring, ringBounds } from '../../core/plane/ring.ts';
import type { Survey } from '../../core/survey.ts';
import { chosenObstacles, type Keys } from './selection.ts';

/** Ground left between a thing and the outline around it, metres. */
const MARGIN = 0.15;

/** A box that lies along its own frame: `box` in the frame, `ring` on the ground. */
export interface Outline {
  readonly key: string;
  readonly frame: Pose;
  readonly box: Bounds;
  readonly ring: Ring;
}

function outlineAround(key: string, frame: Pose, pieces: readonly PlacedPiece[]): Outline {
  const corners = pieces.flatMap((piece) => piece.footprint.map((corner) => toLocal(frame, { ...corner, angle: 0 })));
  const tight = corners.length === 0 ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : ringBounds(corners);
  const box = {
    minX: tight.minX - MARGIN,
    minY: tight.minY - MARGIN,
    maxX: tight.maxX + MARGIN,
    maxY: tight.maxY + MARGIN,
  };
  const ring = [
    toWorld(frame, { x: box.minX, y: box.minY }),
    toWorld(frame, { x: box.maxX, y: box.minY }),
    toWorld(frame, { x: box.maxX, y: box.maxY }),
    toWorld(frame, { x: box.minX, y: box.maxY }),
  ];
  return { key, frame, box, ring };
}

function obstacleOutline(obstacle: PlacedObstacle): Outline {
  return outlineAround(obstacle.obstacle.id, obstacle.obstacle.pose, obstacle.pieces);
}

/** What to draw around everything that is chosen, obstacles first. */
export function outlines({ survey, chosen }: { readonly survey: Survey; readonly chosen: Keys }): readonly Outline[] {
  return outlinesOf(survey, chosen);
}

const outlinesOf = memoizeByIdentity((survey: Survey, chosen: Keys): readonly Outline[] => {
  const pieces = survey.pieces.filter((piece) => chosen.includes(piece.key));
  return [
    ...chosenObstacles(survey, chosen).map(obstacleOutline),
    ...pieces.map((piece) => outlineAround(piece.key, piece.pose, [piece])),
  ];
});

/** The middle of an outline on the ground. */
export function outlineCentre({ frame, box }: Outline): Pose {
  return compose(frame, { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, angle: 0 });
}
