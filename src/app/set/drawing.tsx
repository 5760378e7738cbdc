import { placedObstacle } from '../../core/course/placed.ts';
import type { ShelfItem } from '../../core/course/shelf-item.ts';
import { memoizeByIdentity } from '../../core/memo/by-identity.ts';
import { buildObstacle } from '../../core/obstacles/build.ts';
import type { Mark } from '../../core/plane/mark.ts';
import { distance, type Point } from '../../core/plane/point.ts';
import { ORIGIN } from '../../core/plane/pose.ts';
import { type Bounds, type Ring, ringArea } from '../../core/plane/ring.ts';
import { useTheme } from '../arena/layers/use-theme.ts';
import { movedMarks } from '../arena/painters/moved-marks.ts';

/** What a kind builds from its usual values: its marks and the ground it covers, metres. */
export interface Sketch {
  readonly marks: readonly Mark[];
  readonly bounds: Bounds;
}

/** A pole is drawn no thinner, pixels. */
const LEAST_POLE = 3;

const sketches = new Map<string, Sketch | null>();

/** The usual obstacle of a kind as marks; null when its usual values do not build. */
export function sketchOf(kind: string): Sketch | null {
  const known = sketches.get(kind);
  if (known !== undefined) return known;
  const obstacle = buildObstacle(kind, kind, {}, ORIGIN);
  const sketch = 'why' in obstacle ? null : sketched(placedObstacle(obstacle));
  sketches.set(kind, sketch);
  return sketch;
}

/** An obstacle from the shelf as marks, as it was kept. */
export const shelfSketch = memoizeByIdentity((item: ShelfItem): Sketch => {
  const sketch = sketched(placedObstacle({ ...item.obstacle, pose: { ...ORIGIN, angle: item.obstacle.pose.angle } }));
  return sketch;
});

function sketched(placed: ReturnType<typeof placedObstacle>): Sketch {
  return {
    marks: placed.pieces.flatMap((piece) => movedMarks(piece.figure.marks, piece.pose)),
    bounds: placed.bounds,
  };
}

/** A sketch as a small picture: as large as fits the box, or at `scale` pixels a metre. */
export function Drawing({
  sketch,
  width,
  height,
  scale,
}: {
  readonly sketch: Sketch;
  readonly width: number;
  readonly height: number;
  readonly scale?: number;
}) {
  const { inks } = useTheme();
  const { bounds } = sketch;
  const [long, wide] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
  const margin = 4;
  const fit = Math.min((width - 2 * margin) / Math.max(long, 0.3), (height - 2 * margin) / Math.max(wide, 0.3), 26);
  const k = scale ?? fit;
  const to = (at: Point) =>
    `${(width / 2 + (at.x - (bounds.minX + bounds.maxX) / 2) * k).toFixed(1)} ${(height / 2 - (at.y - (bounds.minY + bounds.maxY) / 2) * k).toFixed(1)}`;
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true" className="drawing">
      {sketch.marks.map((mark, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: marks have no names and never change places.
        <PaintedMark key={index} mark={mark} to={to} scale={k} colour={inks[mark.ink]} least={LEAST_POLE} />
      ))}
    </svg>
  );
}

/** The width of a long ring from its area and circumference, as if it were a rectangle. */
function ringWidth(ring: Ring): number {
  const around = ring.reduce((sum, at, index) => sum + distance(at, ring[(index + 1) % ring.length] ?? at), 0);
  return (around - Math.sqrt(Math.max(0, around * around - 16 * Math.abs(ringArea(ring))))) / 4;
}

/** One mark of a small picture. Solid things are drawn no thinner than `least` pixels, hairlines as `line`. */
export function PaintedMark({
  mark,
  to,
  scale,
  colour,
  least,
  line = 0.8,
}: {
  readonly mark: Mark;
  to(at: Point): string;
  /** Pixels a metre. */
  readonly scale: number;
  readonly colour: string;
  readonly least: number;
  readonly line?: number;
}) {
  switch (mark.kind) {
    case 'area': {
      // Bands lie inside the outline of what they are painted on.
      const missing = (mark.ink === 'stripe' ? least - 1 : least) - ringWidth(mark.ring) * scale;
      const stroke = missing > 0 ? { stroke: colour, strokeWidth: missing, strokeLinejoin: 'round' as const } : {};
      return <path d={`M${mark.ring.map(to).join('L')}Z`} fill={colour} {...stroke} />;
    }
    case 'line': {
      const width = Math.max(line, (mark.width ?? 0) * scale);
      return <path d={`M${mark.points.map(to).join('L')}`} fill="none" stroke={colour} strokeWidth={width} />;
    }
    case 'disc': {
      const [x, y] = to(mark.at).split(' ');
      const paint = mark.fill === 'full' ? { fill: colour } : { fill: 'none', stroke: colour };
      return <circle cx={x} cy={y} r={Math.max(least / 2, mark.radius * scale)} {...paint} />;
    }
    case 'words':
      return null;
  }
}
