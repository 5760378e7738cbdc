import { DxfWriter, LWPolylineFlags, TextHorizontalAlignment, TextVerticalAlignment, Units } from '@tarikjabiri/dxf';
import { dimensions } from '../../core/course/dimensions.ts';
import type { PlacedPiece } from '../../core/course/placed.ts';
import { printLength } from '../../core/measure/length.ts';
import { INCH, type LengthUnit, type Metres } from '../../core/measure/quantity.ts';
import { gatePiece } from '../../core/pieces/gate.ts';
import { markerPiece } from '../../core/pieces/marker.ts';
import { polePiece } from '../../core/pieces/pole.ts';
import { pathEnd, poseOn, type Stretch } from '../../core/plane/path.ts';
import type { Point } from '../../core/plane/point.ts';
import { toWorld } from '../../core/plane/pose.ts';
import { type Survey, survey } from '../../core/survey.ts';
import { sheetFileName } from '../../core/text/file-name.ts';
import { opening, railLines } from '../ground.ts';
import type { ExportFormat } from './format.ts';

/** Layers with their colours, by the index of the format: 7 is black on white. */
const LAYERS = {
  WALLS: 7,
  POLES: 30,
  MARKERS: 10,
  GATE: 150,
  'OTHER-THINGS': 96,
  'LINE-WALK': 5,
  'LINE-JOG': 3,
  'LINE-LOPE': 1,
  'LINE-BACK': 6,
  'LINE-SIDE-PASS': 4,
  'LINE-TURN': 6,
  'LINE-WORK': 4,
  NUMBERS: 7,
  LETTERS: 7,
  DIMENSIONS: 8,
} as const;
type Layer = keyof typeof LAYERS;

const PIECE_LAYERS: Readonly<Record<string, Layer>> = {
  [polePiece.id]: 'POLES',
  [markerPiece.id]: 'MARKERS',
  [gatePiece.id]: 'GATE',
};

/** Heights of letters on the ground. */
const LETTERS: Readonly<Record<'number' | 'small', Metres>> = { number: 0.6, small: 0.25 };

/** An arc of more than this is written as two: half a turn is the most that is told without doubt. */
const MOST_SWEEP = Math.PI;
/** Digits after the point: a hundred-thousandth of a millimetre, and no exponents, which old readers do not know. */
const DIGITS = 8;

function rounded(value: number): number {
  // Adding 0 turns −0 into 0.
  return Number(value.toFixed(DIGITS)) + 0;
}

/** A drawing under way; places and lengths in metres on the ground. */
interface Drawing {
  /** Bulges are tangents of quarters of the sweep to the next point: 0 is straight on, positive turns left. */
  line(layer: Layer, points: readonly Vertex[], shape?: 'open' | 'closed'): void;
  circle(layer: Layer, centre: Point, radius: Metres): void;
  /** Words with their middle at a place. */
  words(layer: Layer, at: Point, text: string, height: Metres): void;
  /** The file. */
  text(): string;
}

type Vertex = Point & { readonly bulge?: number };

function newDrawing(unit: LengthUnit): Drawing {
  const writer = new DxfWriter();
  const perMetre = unit === 'ft' ? 1 / INCH : 1;
  writer.document.setUnits(unit === 'ft' ? Units.Inches : Units.Meters);
  writer.setVariable('$MEASUREMENT', { 70: unit === 'ft' ? 0 : 1 });
  for (const [name, colour] of Object.entries(LAYERS)) writer.addLayer(name, colour, 'Continuous');
  const placed = ({ x, y }: Point) => ({ x: rounded(x * perMetre), y: rounded(y * perMetre), z: 0 });
  return {
    line(layer, points, shape = 'open') {
      const vertices = points.map((point) => ({ point: placed(point), bulge: rounded(point.bulge ?? 0) }));
      const flags = shape === 'closed' ? LWPolylineFlags.Closed : LWPolylineFlags.None;
      writer.addLWPolyline(vertices, { layerName: layer, flags });
    },
    circle(layer, centre, radius) {
      writer.addCircle(placed(centre), rounded(radius * perMetre), { layerName: layer });
    },
    words(layer, at, text, height) {
      writer.addText(placed(at), rounded(height * perMetre), text, {
        layerName: layer,
        horizontalAlignment: TextHorizontalAlignment.Center,
        verticalAlignment: TextVerticalAlignment.Middle,
        secondAlignmentPoint: placed(at),
      });
    },
    text: () => `${writer.document.stringify()}\n`,
  };
}

function middle(a: Point, b: Point): Point {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** Less than this is the same length, metres. */
const SAME: Metres = 1e-6;

/** A piece as what it covers: a round thing as a circle, anything else by its corners. */
function drawPiece(drawing: Drawing, { kind, figure, pose, footprint }: PlacedPiece): void {
  const layer = PIECE_LAYERS[kind.id] ?? 'OTHER-THINGS';
  const round = figure.marks.find(
    (mark) =>
      mark.kind === 'disc' &&
      Math.abs(2 * mark.radius - figure.length) < SAME &&
      Math.abs(2 * mark.radius - figure.width) < SAME,
  );
  if (round?.kind === 'disc') drawing.circle(layer, toWorld(pose, round.at), round.radius);
  else drawing.line(layer, footprint, 'closed');
}

/** The points of a stretch without its end, each with its bulge. */
function bulged(stretch: Stretch): readonly Vertex[] {
  const sweep = stretch.curvature * stretch.length;
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / MOST_SWEEP));
  return Array.from({ length: count }, (_, i) => {
    const { x, y } = poseOn(stretch, (stretch.length * i) / count);
    return { x, y, bulge: Math.tan(sweep / count / 4) };
  });
}

/** The line of travel, exact: one polyline of straights and arcs for each part that is ridden alike. */
function drawLine(drawing: Drawing, { line, layout }: Survey): void {
  let layer: Layer | undefined;
  let points: Vertex[] = [];
  let end: Point | undefined;
  const finish = (): void => {
    if (layer !== undefined && end !== undefined) drawing.line(layer, [...points, end]);
    points = [];
  };
  for (const { move, gait, path, length } of line.elements) {
    if (length === 0 || path.length === 0) continue;
    const own: Layer = `LINE-${(move === 'ride' ? gait : move).toUpperCase() as Uppercase<typeof gait>}`;
    const [first] = path;
    const joins =
      end !== undefined && first !== undefined && Math.hypot(first.start.x - end.x, first.start.y - end.y) < SAME;
    if (own !== layer || !joins) finish();
    layer = own;
    points.push(...path.filter((stretch) => stretch.length > 0).flatMap(bulged));
    end = pathEnd(path);
  }
  finish();
  if (layout.ride.legs.length === 0) return;
  drawing.words('NUMBERS', layout.ride.start, 'START', LETTERS.small);
  if (end !== undefined) drawing.words('NUMBERS', end, 'END', LETTERS.small);
}

/** The gaps on the line, and the lengths that are kept. */
function drawDimensions(drawing: Drawing, { course, layout, line }: Survey): void {
  const tape = (from: Point, to: Point, text: string): void => {
    drawing.line('DIMENSIONS', [from, to]);
    drawing.words('DIMENSIONS', middle(from, to), text, LETTERS.small);
  };
  for (const { ends, taped } of line.gaps) tape(...ends, printLength(taped, course.unit));
  for (const { kind, unit, from, to, printed } of dimensions(layout, course.arena, course.unit)) {
    if (unit === 'm' && kind !== 'gap') tape(from, to, printed);
  }
}

function drawnGround(of: Survey): string {
  const { course, pieces, obstacles, numbers, letters } = of;
  const drawing = newDrawing(course.unit);
  for (const rail of railLines(course.arena)) drawing.line('WALLS', rail);
  drawing.words('WALLS', middle(...opening(course.arena)), 'Entrance', LETTERS.small);
  for (const piece of pieces) {
    drawPiece(drawing, piece);
    const letter = letters.get(piece.key);
    if (letter !== undefined) drawing.words('LETTERS', piece.pose, letter, LETTERS.small);
  }
  drawLine(drawing, of);
  for (const { obstacle, bounds } of obstacles) {
    const own = numbers.get(obstacle.id);
    const at = middle({ x: bounds.minX, y: bounds.minY }, { x: bounds.maxX, y: bounds.maxY });
    if (own !== undefined) drawing.words('NUMBERS', at, own.join(', '), LETTERS.number);
  }
  drawDimensions(drawing, of);
  return drawing.text();
}

/**
 * What lies on the ground for drawing programs, by layers: in inches where the course is in feet, else in metres; x along
 * the arena, y across, from the datum corner. Poles by their corners, the line of travel as exact arcs.
 */
export const dxfFormat: ExportFormat = {
  id: 'dxf',
  title: 'Drawing for CAD',
  ending: 'dxf',
  about: 'course',
  async write({ course }, _resources, { step, signal }) {
    await step(0, 1);
    signal?.throwIfAborted();
    const bytes = new TextEncoder().encode(drawnGround(survey(course)));
    return [{ name: sheetFileName(course.title, 'ground', 'dxf'), type: 'image/vnd.dxf', bytes }];
  },
};
