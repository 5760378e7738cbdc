import { placedObstacle } from '../../core/course/placed.ts';
import type { ShelfItem } from '../../core/course/shelf-item.ts';
import { memoizeByIdentity } from '../../core/memo/by-identity.ts';
import { buildObstacle } from '../../core/obstacles/build.ts';
import type { Mark } from '../../core/plane/mark.ts';
import type { Point } from '../../core/plane/point.ts';
import { ORIGIN } from '../../core/plane/pose.ts';
import type { Bounds } from '../../core/plane/ring.ts';
import { useTheme } from '../arena/layers/use-theme.ts';
import { movedMarks } from '../arena/painters/moved-marks.ts';

/** What a kind builds from its usual values: its marks and the ground it covers, metres. */
export interface Sketch {
  readonly marks: readonly Mark[];
  readonly bounds: Bounds;
}

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
        <SketchMark key={index} mark={mark} to={to} scale={k} colour={inks[mark.ink]} />
      ))}
    </svg>
  );
}

function SketchMark({
  mark,
  to,
  scale,
  colour,
}: {
  readonly mark: Mark;
  readonly to: (at: Point) => string;
  readonly scale: number;
  readonly colour: string;
}) {
  switch (mark.kind) {
    case 'area':
      return (
        <path
          d={`M${mark.ring.map(to).join('L')}Z`}
          fill={colour}
          stroke={mark.ink === 'stripe' ? 'none' : colour}
          strokeWidth="1.6"
          strokeLinejoin="round"
        />
      );
    case 'line': {
      const width = Math.max(0.8, (mark.width ?? 0) * scale);
      return <path d={`M${mark.points.map(to).join('L')}`} fill="none" stroke={colour} strokeWidth={width} />;
    }
    case 'disc': {
      const [x, y] = to(mark.at).split(' ');
      const paint = mark.fill === 'full' ? { fill: colour } : { fill: 'none', stroke: colour };
      return <circle cx={x} cy={y} r={Math.max(1.2, mark.radius * scale)} {...paint} />;
    }
    case 'words':
      return null;
  }
}
