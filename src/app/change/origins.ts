import { SAME, SAME_ANGLE } from '../../core/change/differences.ts';
import type { Layout } from '../../core/course/course.ts';
import { obstacleOf } from '../../core/course/ids.ts';
import { type PlacedObstacle, type PlacedPiece, placedObstacle } from '../../core/course/placed.ts';
import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit, Metres, Radians } from '../../core/measure/quantity.ts';
import { memoizeByIdentity } from '../../core/memo/by-identity.ts';
import { distance } from '../../core/plane/point.ts';
import { normalizeAngle, type Pose } from '../../core/plane/pose.ts';

/** Where a thing of the shown layout lies in another one. */
export type Origin =
  | { readonly kind: 'moved'; readonly from: Pose; readonly to: Pose; readonly by: Metres; readonly turn: Radians }
  | { readonly kind: 'same' }
  /** Only in the shown layout, or only in the other. */
  | { readonly kind: 'new' | 'gone' };

const NO_PIECES: readonly PlacedPiece[] = [];

/** The pieces of an obstacle that lie elsewhere, or not at all, in the obstacle of the shown layout. */
const piecesElsewhere = memoizeByIdentity(
  (ghost: PlacedObstacle, shown: PlacedObstacle | undefined): readonly PlacedPiece[] => {
    if (ghost === shown) return NO_PIECES;
    const lying = new Map(shown?.pieces.map((piece) => [piece.key, piece]));
    return ghost.pieces.filter((piece) => {
      const same = lying.get(piece.key);
      return same === undefined || same.kind !== piece.kind || !isSameSize(same, piece) || !isSamePlace(same, piece);
    });
  },
);

function isSameSize({ figure: a }: PlacedPiece, { figure: b }: PlacedPiece): boolean {
  return a === b || (Math.abs(a.length - b.length) < SAME && Math.abs(a.width - b.width) < SAME);
}

function isSamePlace({ pose: a }: { readonly pose: Pose }, { pose: b }: { readonly pose: Pose }): boolean {
  return distance(a, b) < SAME && Math.abs(normalizeAngle(a.angle - b.angle)) < SAME_ANGLE;
}

/** What is drawn of another layout under the shown one: the pieces that lie elsewhere in it. */
export function ghostPieces(ghost: Layout, shown: Layout): readonly PlacedPiece[] {
  const lying = new Map(shown.obstacles.map((obstacle) => [obstacle.id, obstacle]));
  return ghost.obstacles.flatMap((obstacle) => {
    const same = lying.get(obstacle.id);
    return piecesElsewhere(placedObstacle(obstacle), same === undefined ? undefined : placedObstacle(same));
  });
}

/** Where the obstacle or piece that the key names lies: an obstacle at its frame, a piece at its middle. */
function poseOf(layout: Layout, key: string): { readonly pose: Pose; readonly kind: string } | undefined {
  const id = obstacleOf(key);
  const obstacle = layout.obstacles.find((each) => each.id === id);
  if (obstacle === undefined || key === id) return obstacle;
  const piece = placedObstacle(obstacle).pieces.find((each) => each.key === key);
  return piece === undefined ? undefined : { pose: piece.pose, kind: `${obstacle.kind}/${piece.kind.id}` };
}

/** Where a thing of the shown layout comes from; undefined when neither layout has it. */
export function originOf(from: Layout, shown: Layout, key: string): Origin | undefined {
  const [before, after] = [poseOf(from, key), poseOf(shown, key)];
  if (before === undefined && after === undefined) return undefined;
  if (after === undefined) return { kind: 'gone' };
  // Another kind under the same id is another thing.
  if (before === undefined || before.kind !== after.kind) return { kind: 'new' };
  if (isSamePlace(before, after)) return { kind: 'same' };
  const turn = normalizeAngle(after.pose.angle - before.pose.angle);
  return { kind: 'moved', from: before.pose, to: after.pose, by: distance(before.pose, after.pose), turn };
}

/** `12' 3"`, `12' 3", turned 15°`: how far a thing was moved, for an arrow. */
export function moveWords(
  { by, turn }: { readonly by: Metres; readonly turn: Radians },
  { unit }: { readonly unit: LengthUnit },
): string {
  const length = by < SAME ? [] : [printLength(by, unit)];
  const angle = Math.abs(turn) < SAME_ANGLE ? [] : [`turned ${printAngle(Math.abs(turn))}`];
  return [...length, ...angle].join(', ');
}

/** What became of a thing since another layout: `moved 12' 3", turned 15° from Novice`. */
function originWords(origin: Origin, title: string, unit: LengthUnit): string {
  switch (origin.kind) {
    case 'moved':
      return `${origin.by < SAME ? '' : 'moved '}${moveWords(origin, { unit })} from ${title}`;
    case 'same':
      return `as in ${title}`;
    case 'new':
      return `not in ${title}`;
    case 'gone':
      return `only in ${title}`;
  }
}

/** Where a thing comes from in each of the other layouts, as parts of one sentence; empty when there are none. */
export function originsWords(
  key: string,
  { shown, others, unit }: { readonly shown: Layout; readonly others: readonly Layout[]; readonly unit: LengthUnit },
): string {
  return others
    .flatMap((layout) => {
      const origin = originOf(layout, shown, key);
      return origin === undefined ? [] : [originWords(origin, layout.title, unit)];
    })
    .join(', ');
}
