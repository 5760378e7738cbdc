/** What lies on the ground, on paper: the rail with its opening, and the pieces by their own marks. */
import type { Arena } from '../core/course/course.ts';
import type { PlacedPiece } from '../core/course/placed.ts';
import type { Mark } from '../core/plane/mark.ts';
import { pathBounds } from '../core/plane/path.ts';
import type { Point } from '../core/plane/point.ts';
import { toWorld } from '../core/plane/pose.ts';
import { type Bounds, ringBounds, unionBounds } from '../core/plane/ring.ts';
import type { Survey } from '../core/survey.ts';
import { blockLine, blockRing, type OccupancyGrid } from './occupancy-grid.ts';
import { boundsMeet, grown, type PaperShape, pointBounds } from './paper-shapes.ts';
import { markOnPaper, onPaper, type PaperPoint, type PaperTransform, perMetre } from './paper-transform.ts';

/** The corners of the arena, counter-clockwise from its datum. */
function arenaCorners({ length, width }: Arena): readonly [Point, Point, Point, Point] {
  return [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: length, y: width },
    { x: 0, y: width },
  ];
}

/** The two ends of the opening on the ground. They keep inside the wall whatever the course says. */
export function opening(arena: Arena): readonly [Point, Point] {
  const { wall, at, width } = arena.entrance;
  const along = wall === 'south' || wall === 'north';
  const most = along ? arena.length : arena.width;
  const from = Math.min(most, Math.max(0, at - width / 2));
  const to = Math.min(most, Math.max(0, at + width / 2));
  const across = wall === 'north' ? arena.width : wall === 'east' ? arena.length : 0;
  return along
    ? [
        { x: from, y: across },
        { x: to, y: across },
      ]
    : [
        { x: across, y: from },
        { x: across, y: to },
      ];
}

/** The rail as strokes that leave the opening free. */
export function railLines(arena: Arena): readonly (readonly Point[])[] {
  const [a, b, c, d] = arenaCorners(arena);
  const [from, to] = opening(arena);
  switch (arena.entrance.wall) {
    case 'south':
      return [[to, b, c, d, a, from]];
    case 'east':
      return [[to, c, d, a, b, from]];
    case 'north':
      return [[from, d, a, b, c, to]];
    case 'west':
      return [[from, a, b, c, d, to]];
  }
}

/** The arena and everything that lies in or near it, metres. */
export function extent(survey: Survey): Bounds {
  const { length, width } = survey.course.arena;
  const arena = { minX: 0, minY: 0, maxX: length, maxY: width };
  const points = [...survey.pieces.flatMap(({ footprint }) => footprint), survey.layout.ride.start];
  const things = unionBounds(arena, ringBounds(points));
  return survey.line.elements
    .filter(({ path }) => path.length > 0)
    .reduce((all, { path }) => unionBounds(all, pathBounds(path)), things);
}

/** The rail, and posts on both sides of the opening. */
export function railMarks(transform: PaperTransform, arena: Arena): readonly Mark<'paper'>[] {
  const rails = railLines(arena).map(
    (points): Mark<'paper'> => ({ kind: 'line', ink: 'rail', points: points.map((at) => onPaper(transform, at)) }),
  );
  const posts = opening(arena).map(
    (at): Mark<'paper'> => ({ kind: 'disc', at: onPaper(transform, at), radius: 0.8, ink: 'rail', fill: 'full' }),
  );
  return [...rails, ...posts];
}

/** A solid thing without an outline of its own is edged, so that pale areas stand out on white. */
function edgeMarks(transform: PaperTransform, piece: PlacedPiece): readonly Mark<'paper'>[] {
  const ring = piece.footprint.map((at) => onPaper(transform, at));
  const [first] = ring;
  return first === undefined ? [] : [{ kind: 'line', ink: 'outline', points: [...ring, first] }];
}

/** What is covered and drawn of a piece, metres: the swing of a gate reaches beyond what the gate covers. */
export function drawnBounds({ bounds, figure, pose }: PlacedPiece): Bounds {
  const points = figure.marks.flatMap((mark) => (mark.kind === 'line' ? mark.points : []));
  return points.length === 0 ? bounds : unionBounds(bounds, ringBounds(points.map((at) => toWorld(pose, at))));
}

/** A thing smaller than this on paper gets a ring about it, or nobody would see it, mm. */
const SMALL = 1.6;
const RING = 1.15;

function isSmall(transform: PaperTransform, { figure }: PlacedPiece): boolean {
  return Math.max(figure.length, figure.width) * perMetre(transform) < SMALL;
}

/** How far about its footprint a piece's marks reach on paper, mm. */
export function markOverhang(transform: PaperTransform, piece: PlacedPiece): number {
  return isSmall(transform, piece) ? RING : 0;
}

/** A piece as its own marks, true to scale. */
export function pieceMarks(transform: PaperTransform, piece: PlacedPiece): readonly Mark<'paper'>[] {
  const { figure, pose } = piece;
  const own = figure.marks.flatMap((mark) => markOnPaper(transform, pose, mark) ?? []);
  const hasOutline = figure.marks.some((mark) => mark.kind !== 'words' && mark.ink === 'outline');
  const marks = hasOutline ? own : [...own, ...edgeMarks(transform, piece)];
  if (!isSmall(transform, piece)) return marks;
  return [...marks, { kind: 'disc', at: onPaper(transform, pose), radius: RING, ink: 'outline', fill: 'rim' }];
}

/** Half the stroke of an edge, mm. */
const EDGE = 0.1;

/** A piece as its marks, and as what no label may cover: its footprint, and what is drawn beyond it. */
export function drawnShapes(
  transform: PaperTransform,
  piece: PlacedPiece,
): { readonly marks: readonly Mark<'paper'>[]; readonly shapes: readonly PaperShape[] } {
  const marks = pieceMarks(transform, piece);
  const footprint = footprintOnPaper(transform, piece);
  const inside = grown(pointBounds(footprint), 0.02);
  const beyond = marks.flatMap((mark): PaperShape[] => {
    if (mark.kind === 'words') return [];
    if (mark.kind === 'disc') return [{ points: [mark.at, mark.at], reach: mark.radius + EDGE, firmness: 'solid' }];
    const points = mark.kind === 'line' ? mark.points : mark.ring;
    const isWithin = points.every(({ x, y }) => boundsMeet({ minX: x, maxX: x, minY: y, maxY: y }, inside));
    // Most marks of a piece lie on its footprint, and many pieces have a dozen.
    if (isWithin && footprint.length <= 4 && isUpright(footprint)) return [];
    if (isWithin && mark.ink !== 'faint' && piece.figure.stands === 'ground') return [];
    const firmness = mark.ink === 'faint' ? 'faint' : 'solid';
    return [{ points, reach: EDGE, ...(mark.kind === 'area' ? { isFilled: true as const } : {}), firmness }];
  });
  return { marks, shapes: [{ points: footprint, reach: EDGE, isFilled: true, firmness: 'solid' }, ...beyond] };
}

/** Whether an outline has its sides along the page's. */
function isUpright([a, b]: readonly PaperPoint[]): boolean {
  return a !== undefined && b !== undefined && (Math.abs(a.x - b.x) < 0.01 || Math.abs(a.y - b.y) < 0.01);
}

export function footprintOnPaper(transform: PaperTransform, piece: PlacedPiece): readonly PaperPoint[] {
  return piece.footprint.map((at) => onPaper(transform, at));
}

/** Air between a thing and a label, mm. */
export const AIR = 0.7;

/** No label stands on the rail or on a piece. */
export function blockGround(
  grid: OccupancyGrid,
  { arena, pieces }: { readonly arena: Arena; readonly pieces: readonly PlacedPiece[] },
  transform: PaperTransform,
): void {
  for (const rail of railLines(arena)) {
    const points = rail.map((at) => onPaper(transform, at));
    blockLine(grid, points, AIR);
  }
  for (const piece of pieces) {
    blockRing(grid, footprintOnPaper(transform, piece), AIR + markOverhang(transform, piece));
  }
}
