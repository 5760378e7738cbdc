import { placedObstacle } from '../../core/course/placed.ts';
import { STOCK_HORSE } from '../../core/horses/horses.ts';
import { buildObstacle } from '../../core/obstacles/build.ts';
import type { ObstacleKind } from '../../core/obstacles/obstacle.ts';
import type { Ink } from '../../core/plane/mark.ts';
import { type Path, pathEnd, pathLength, pathPoints, poseAt } from '../../core/plane/path.ts';
import type { Point } from '../../core/plane/point.ts';
import { ORIGIN, type Pose, toWorld } from '../../core/plane/pose.ts';
import { type Bounds, ringBounds, unionBounds } from '../../core/plane/ring.ts';
import { type PassageLine, passageLine } from '../../core/ride/passage-line.ts';
import { useTheme } from '../arena/layers/use-theme.ts';
import { PaintedMark, type Sketch, sketchOf } from './drawing.tsx';

/** Of the picture, pixels. */
const WIDTH = 100;
const HEIGHT = 56;
const MARGIN = 5;
/** More pixels a metre would make a mailbox larger than a bridge. */
const MOST_SCALE = 22;
const LEAST_POLE = 3;
const WAY = 1.8;
/** Length and half the width of an arrowhead, pixels. */
const HEAD = { long: 7, half: 3.6 } as const;
/** The line goes on so far before and after what is crossed, and its chords are so long. Metres. */
const BEYOND = 0.9;
const CHORD = 0.15;

/** Cups and gates are of iron, which must be seen beside the pole that it holds. Pixels. */
const IRON = 2.4;
/** A horse that stands across a pole to side pass, from its middle to either end; one every so often. Metres. */
const HALF_HORSE = 0.8;
const HORSE_EVERY = 1.3;
/** A turn on the spot that is not a corner by itself, and the radius of its sign. Radians and metres. */
const SHOWN_TURN = (100 * Math.PI) / 180;
const TURN_RADIUS = 0.55;

/** A part of the way over an obstacle that is ridden alike, on the ground in metres. It ends in an arrow, or does not. */
interface Way {
  readonly ink: Ink;
  readonly points: readonly Point[];
  readonly hasHead: boolean;
}

interface KindSketch extends Sketch {
  readonly ways: readonly Way[];
}

const known = new Map<string, KindSketch | null>();

/** The usual obstacle of a kind with its first way to ride it; null when its usual values do not build. */
function kindSketch(kind: ObstacleKind): KindSketch | null {
  const before = known.get(kind.id);
  if (before !== undefined) return before;
  const sketch = sketchOf(kind.id);
  const obstacle = buildObstacle(kind.id, kind.id, {}, ORIGIN);
  const made = sketch === null || 'why' in obstacle ? null : withWays(sketch, obstacle);
  known.set(kind.id, made);
  return made;
}

function withWays(sketch: Sketch, obstacle: Parameters<typeof placedObstacle>[0]): KindSketch {
  const [passage] = obstacle.passages;
  const [gait] = passage?.gaits ?? [];
  if (passage === undefined || gait === undefined) return { ...sketch, ways: [] };
  const line = passageLine(placedObstacle(obstacle), { passage, gait, horse: STOCK_HORSE });
  const ways = line === undefined ? [] : waysOf(line);
  const ground = ways.flatMap(({ points }) => points);
  const bounds: Bounds = ground.length === 0 ? sketch.bounds : unionBounds(sketch.bounds, ringBounds(ground));
  return { ...sketch, bounds, ways };
}

/** Ahead of a pose, or behind it where `by` is negative. */
function ahead(pose: Pose, by: number): Point {
  return toWorld(pose, { x: by, y: 0 });
}

/**
 * The line over an obstacle, with a bit of straight before and after the poles that it enters and leaves over. Its end has
 * the arrow; a turn on the spot has one of its own, and horses stand across what is side passed.
 */
function waysOf(line: PassageLine): readonly Way[] {
  const runs: { ink: Ink; points: Point[] }[] = [];
  const signs: Way[] = [];
  // A horse that turns round before it backs, or about a gate, does nothing that tells kinds apart.
  const isWorked = line.elements.some(({ move }) => move === 'work');
  let here: Pose = line.start;
  for (const { move, path, turn, facing } of line.elements) {
    if (Math.abs(turn) > SHOWN_TURN && runs.length > 0 && !isWorked) signs.push(turnSign(here, turn));
    if (path.length === 0) continue;
    // The gait is chosen later, so all that is ridden forwards looks alike.
    const ink: Ink = move === 'ride' ? 'words' : move;
    const points = pathPoints(path, CHORD);
    if (move === 'side-pass') signs.push(...horsesAcross(path, facing));
    const last = runs.at(-1);
    if (last?.ink === ink) last.points.push(...points.slice(1));
    else runs.push({ ink, points });
    here = pathEnd(path);
  }
  const [first, last] = [runs[0], runs.at(-1)];
  if (first !== undefined && line.entersOver) first.points.unshift(ahead(line.start, -BEYOND));
  if (last !== undefined && line.leavesOver) last.points.push(ahead(here, BEYOND));
  return [...signs, ...runs.map((run) => ({ ...run, hasHead: run === last }))];
}

/** Most of a circle, the way round that the horse turns. */
function turnSign(at: Pose, turn: number): Way {
  const steps = 20;
  const points = Array.from({ length: steps + 1 }, (_, index) => {
    const angle = at.angle + Math.sign(turn) * (Math.PI / 4 + (index / steps) * 1.6 * Math.PI);
    return { x: at.x + TURN_RADIUS * Math.cos(angle), y: at.y + TURN_RADIUS * Math.sin(angle) };
  });
  return { ink: 'turn', points, hasHead: true };
}

function horsesAcross(path: Path, facing: number): readonly Way[] {
  const length = pathLength(path);
  const count = Math.max(1, Math.floor(length / HORSE_EVERY));
  return Array.from({ length: count }, (_, index): Way => {
    const pose = poseAt(path, ((index + 0.5) * length) / count);
    const standing = { ...pose, angle: pose.angle + facing };
    return { ink: 'side-pass', points: [ahead(standing, -HALF_HORSE), ahead(standing, HALF_HORSE)], hasHead: false };
  });
}

/** What a kind looks like from above at its usual values, and which way it is ridden: backwards is dashed. */
export function KindPicture({ kind }: { readonly kind: ObstacleKind }) {
  const { inks } = useTheme();
  const sketch = kindSketch(kind);
  if (sketch === null) return null;
  const { bounds, ways, marks } = sketch;
  const [long, wide] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
  const scale = Math.min((WIDTH - 2 * MARGIN) / long, (HEIGHT - 2 * MARGIN) / wide, MOST_SCALE);
  const pixel = ({ x, y }: Point) => ({
    x: WIDTH / 2 + (x - (bounds.minX + bounds.maxX) / 2) * scale,
    y: HEIGHT / 2 - (y - (bounds.minY + bounds.maxY) / 2) * scale,
  });
  const to = (at: Point) => {
    const { x, y } = pixel(at);
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  };
  return (
    <svg
      width={WIDTH}
      height={HEIGHT}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      aria-hidden="true"
      className="drawing"
      data-picture={kind.id}
    >
      {ways.map(({ ink, points }, index) => (
        <path
          // biome-ignore lint/suspicious/noArrayIndexKey: parts of a way have no names and never change places.
          key={index}
          d={`M${points.map(to).join('L')}`}
          fill="none"
          stroke={inks[ink]}
          strokeWidth={WAY}
          strokeDasharray={ink === 'back' ? '4 2.5' : undefined}
          strokeLinejoin="round"
        />
      ))}
      {marks.map((mark, index) => (
        <PaintedMark
          // biome-ignore lint/suspicious/noArrayIndexKey: marks have no names and never change places.
          key={index}
          mark={mark}
          to={to}
          scale={scale}
          colour={inks[mark.ink]}
          least={LEAST_POLE}
          line={mark.ink === 'metal' ? IRON : 0.8}
        />
      ))}
      {ways
        .filter(({ hasHead }) => hasHead)
        .map(({ ink, points }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: as above.
          <path key={index} d={arrowhead(points.map(pixel))} fill={inks[ink]} />
        ))}
    </svg>
  );
}

/** A triangle at the end of a line on the screen; nothing where the line is too short to have one. */
function arrowhead(points: readonly { readonly x: number; readonly y: number }[]): string {
  const tip = points.at(-1);
  const from = points.findLast((at) => tip !== undefined && Math.hypot(tip.x - at.x, tip.y - at.y) >= HEAD.long / 2);
  if (tip === undefined || from === undefined) return '';
  const angle = Math.atan2(tip.y - from.y, tip.x - from.x);
  const corner = (along: number, across: number) =>
    `${(tip.x - along * Math.cos(angle) - across * Math.sin(angle)).toFixed(1)} ${(tip.y - along * Math.sin(angle) + across * Math.cos(angle)).toFixed(1)}`;
  return `M${tip.x.toFixed(1)} ${tip.y.toFixed(1)}L${corner(HEAD.long, HEAD.half)}L${corner(HEAD.long, -HEAD.half)}Z`;
}
