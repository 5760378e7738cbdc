import type { Arena } from '../../core/course/course.ts';
import type { PlacedObstacle, PlacedPiece } from '../../core/course/placed.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { type Bounds, boundsIntersect } from '../../core/plane/ring.ts';
import type { Guide } from './guide.ts';

/** What is being placed, where the pointer asks for it. */
export interface SnapSubject {
  readonly bounds: Bounds;
  readonly pieces: readonly PlacedPiece[];
  /** How far `pieces` have been carried from where they lie in the course. */
  readonly shift: { readonly x: number; readonly y: number };
  /** The heading asked for, while turning. */
  readonly angle?: number;
}

/** What it can snap to. */
export interface SnapContext {
  readonly arena: Arena;
  readonly unit: LengthUnit;
  readonly others: readonly PlacedObstacle[];
  /** What people call an obstacle or a piece, by its key. */
  name(key: string): string;
  /** The clear distance that is asked for between a wall and what is ridden; null: nobody asks for one. */
  readonly clear: number | null;
  /** Whether something that is ridden moves. What is only there to be seen may stand against the wall. */
  readonly isRidden: boolean;
}

type Axis = 'x' | 'y' | 'angle';

/** A snap candidate: the shift along one axis, and what to show when it is taken. */
export interface SnapCandidate {
  readonly axis: Axis;
  readonly by: number;
  /** Drawn for where everything ends up. */
  guide(end: Bounds): Guide;
}

/** A snap source: a pure function from what moves and where, to candidates. */
export type SnapSource = (moving: SnapSubject, ground: SnapContext) => readonly SnapCandidate[];

/** The shift to add to what was asked, and the guides of the snaps that hold. */
export interface SnapResult {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly guides: readonly Guide[];
}

/** The snap distance: metres on the ground, radians for a turn. */
export interface SnapRange {
  readonly ground: number;
  readonly angle: number;
}

const NO_SNAP: SnapResult = { x: 0, y: 0, angle: 0, guides: [] };
/** Candidates nearer than this to each other are equal, and the earlier source wins. */
const TIE_TOLERANCE = 1e-9;

/** A box shifted so far lies nearer to a wall than is asked for, where it did not before. */
function crowdsWallAnew({ bounds }: SnapSubject, { arena, clear, isRidden }: SnapContext, axis: 'x' | 'y', by: number) {
  const least = isRidden ? (clear ?? 0) : 0;
  const [low, high, size] =
    axis === 'x' ? [bounds.minX, bounds.maxX, arena.length] : [bounds.minY, bounds.maxY, arena.width];
  const lacks = (room: number): boolean => room < least - TIE_TOLERANCE;
  return (lacks(low + by) && !lacks(low)) || (lacks(size - high - by) && !lacks(size - high));
}

/** A shift brings the box of a piece over the box of another one that it did not meet before. */
function touchesAnew({ pieces, shift }: SnapSubject, { others }: SnapContext, dx: number, dy: number): boolean {
  return pieces.some(({ bounds }) => {
    const asked = shifted(bounds, shift.x, shift.y);
    const end = shifted(asked, dx, dy);
    return others.some((other) =>
      other.pieces.some((each) => boundsIntersect(end, each.bounds) && !boundsIntersect(asked, each.bounds)),
    );
  });
}

/** A snap must not make what the checks then report. */
function makesFault(moving: SnapSubject, ground: SnapContext, axis: 'x' | 'y', by: number): boolean {
  const [dx, dy] = axis === 'x' ? [by, 0] : [0, by];
  return crowdsWallAnew(moving, ground, axis, by) || touchesAnew(moving, ground, dx, dy);
}

function shifted(bounds: Bounds, dx: number, dy: number): Bounds {
  return { minX: bounds.minX + dx, minY: bounds.minY + dy, maxX: bounds.maxX + dx, maxY: bounds.maxY + dy };
}

/**
 * All snapping of the program. On each axis the nearest candidate within the snap distance wins, the earlier source on
 * a tie; the whole shift is never longer than the snap distance.
 */
export function snap(
  moving: SnapSubject,
  ground: SnapContext,
  options: { sources: readonly SnapSource[]; reach: SnapRange },
): SnapResult {
  const best: Partial<Record<Axis, SnapCandidate>> = {};
  for (const source of options.sources) {
    for (const pull of source(moving, ground)) {
      const reach = pull.axis === 'angle' ? options.reach.angle : options.reach.ground;
      const held = best[pull.axis];
      const least = held === undefined ? reach + TIE_TOLERANCE : Math.abs(held.by);
      if (Math.abs(pull.by) < least - (held === undefined ? 0 : TIE_TOLERANCE)) best[pull.axis] = pull;
    }
  }
  const { x, y } = best;
  if (x !== undefined && y !== undefined && Math.hypot(x.by, y.by) > options.reach.ground) {
    delete best[Math.abs(x.by) > Math.abs(y.by) ? 'x' : 'y'];
  }
  for (const axis of ['x', 'y'] as const) {
    const pull = best[axis];
    if (pull !== undefined && makesFault(moving, ground, axis, pull.by)) delete best[axis];
  }
  if (best.x !== undefined && best.y !== undefined && touchesAnew(moving, ground, best.x.by, best.y.by)) delete best.y;
  const [dx, dy] = [best.x?.by ?? 0, best.y?.by ?? 0];
  const won = [best.x, best.y, best.angle].filter((pull) => pull !== undefined);
  if (won.length === 0) return NO_SNAP;
  const { bounds } = moving;
  const end = { minX: bounds.minX + dx, minY: bounds.minY + dy, maxX: bounds.maxX + dx, maxY: bounds.maxY + dy };
  return { x: dx, y: dy, angle: best.angle?.by ?? 0, guides: won.map((pull) => pull.guide(end)) };
}
