import type { PlacedPiece } from '../../../core/course/placed.ts';
import type { Metres } from '../../../core/measure/quantity.ts';
import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import type { Figure } from '../../../core/pieces/piece.ts';
import type { Point } from '../../../core/plane/point.ts';
import { screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';

/** No pole is drawn thinner, however far it is seen from. Pixels. */
export const LEAST_WIDTH = 3;
/** A figure this many times as long as wide is drawn along its axis. */
const LONG = 5;
/** From this width on a pole shows its grain, its shine and its sawn ends. Pixels. */
const NEAR = 8;
/** A thing throws its shadow so far to the right and down, for each pixel that it is high. */
const LIGHT: Point<'screen'> = { x: 0.42, y: 0.58 };
/** A raised end stands off its shadow by so much more, so that it reads as raised from afar. Pixels. */
const RAISED = 2.5;
/** The sawn end of a pole, and the plate of a cup along and beside the pole. */
const SAWN: Metres = 0.025;
const CUP: Metres = 0.16;

/** A long timber on the ground, in its own frame: half its length, its bands and its lines, metres. */
interface Timber {
  readonly half: Metres;
  readonly bands: readonly (readonly [Metres, Metres])[];
  /** Lines along it, as parts of its width from its middle. */
  readonly lines: readonly number[];
}

/** A pole in the picture: its two ends, the direction between them, and its width, pixels. */
export interface SeenTimber {
  readonly piece: PlacedPiece;
  readonly timber: Timber;
  readonly from: Point<'screen'>;
  readonly to: Point<'screen'>;
  readonly along: Point<'screen'>;
  readonly long: number;
  readonly wide: number;
  /** How far the shadow of each end stands off, pixels. */
  readonly lift: readonly [number, number];
}

const timberOf = memoizeByIdentity((figure: Figure): Timber | null => {
  const [body] = figure.marks;
  if (figure.stands !== 'ground' || figure.length < LONG * figure.width) return null;
  if (body?.kind !== 'area' || body.ink !== 'timber' || body.ring !== figure.footprint) return null;
  const bands = figure.marks.flatMap((mark): (readonly [Metres, Metres])[] => {
    if (mark.kind !== 'area' || mark.ink !== 'stripe') return [];
    const xs = mark.ring.map(({ x }) => x);
    return [[Math.min(...xs), Math.max(...xs)]];
  });
  const lines = figure.marks.flatMap((mark) =>
    mark.kind === 'line' && mark.ink === 'faint' ? [(mark.points[0]?.y ?? 0) / figure.width] : [],
  );
  return { half: figure.length / 2, bands, lines };
});

/** How it stands in the picture; undefined for what is not a long timber. */
export function seenTimber(piece: PlacedPiece, { camera }: Pick<DrawContext, 'camera'>): SeenTimber | undefined {
  const timber = timberOf(piece.figure);
  if (timber === null) return undefined;
  const { pose } = piece;
  const [dx, dy] = [Math.cos(pose.angle) * timber.half, Math.sin(pose.angle) * timber.half];
  const from = screenOf(camera, { x: pose.x - dx, y: pose.y - dy });
  const to = screenOf(camera, { x: pose.x + dx, y: pose.y + dy });
  const long = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const along = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
  const wide = Math.max(LEAST_WIDTH, piece.figure.width * camera.scale);
  const rests = 0.3 * wide;
  const lift = (end: 'start' | 'end') => {
    const fitting = piece.kind.handling?.fittings?.(piece.piece.values).find((each) => each.end === end);
    return fitting === undefined ? rests : rests + RAISED + fitting.height * camera.scale;
  };
  return { piece, timber, from, to, along, long, wide, lift: [lift('start'), lift('end')] };
}

/** Its shadow on the ground: close under a pole that lies, apart from the end of one that is raised. */
export function traceTimberShadow(
  context: CanvasRenderingContext2D,
  { from, to, along, wide, lift }: SeenTimber,
): void {
  const [x, y] = [(-along.y * wide) / 2, (along.x * wide) / 2];
  const [a, b] = [shadowOf(from, lift[0]), shadowOf(to, lift[1])];
  context.moveTo(a.x - x, a.y - y);
  context.lineTo(b.x - x, b.y - y);
  context.lineTo(b.x + x, b.y + y);
  context.lineTo(a.x + x, a.y + y);
  context.closePath();
}

/** Where the shadow of a place so many pixels high falls. */
export function shadowOf({ x, y }: Point<'screen'>, high: number): Point<'screen'> {
  return { x: x + LIGHT.x * high, y: y + LIGHT.y * high };
}

/** The pole itself: cups under its raised ends, edge, wood, bands; from near by also shine, grain and sawn ends. */
export function paintTimber(context: CanvasRenderingContext2D, seen: SeenTimber, { camera, theme }: DrawContext): void {
  const { piece, timber, from, to, along, long, wide } = seen;
  const rim = wide < NEAR ? 0.7 : 1;
  const scale = long / (2 * timber.half);
  const stroke = (colour: string, width: number) => {
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.stroke();
  };
  /** Between two places along the pole, pixels from its start, so far beside its middle. */
  const segment = (start: number, end: number, aside = 0) => {
    const [x, y] = [from.x - along.y * aside, from.y + along.x * aside];
    context.moveTo(x + along.x * start, y + along.y * start);
    context.lineTo(x + along.x * end, y + along.y * end);
  };
  context.lineCap = 'butt';
  const cup = Math.max(4, CUP * camera.scale);
  const cups: readonly (readonly [number, number])[] = [
    ...(hasCup(piece, 'start') ? [[-cup * 0.4, cup * 0.6] as const] : []),
    ...(hasCup(piece, 'end') ? [[long - cup * 0.6, long + cup * 0.4] as const] : []),
  ];
  if (cups.length > 0) {
    context.beginPath();
    for (const [start, end] of cups) segment(start, end);
    stroke(theme.inks.outline, wide + cup * 0.8 + 1.4);
    context.beginPath();
    for (const [start, end] of cups) segment(start + 0.7, end - 0.7);
    stroke(theme.inks.metal, wide + cup * 0.8);
  }
  context.beginPath();
  segment(-rim, long + rim);
  stroke(theme.inks.outline, wide + 2 * rim);
  context.beginPath();
  context.moveTo(from.x, from.y);
  context.lineTo(to.x, to.y);
  stroke(theme.inks.timber, wide);
  if (timber.bands.length > 0) {
    context.beginPath();
    for (const [start, end] of timber.bands) segment((start + timber.half) * scale, (end + timber.half) * scale);
    stroke(theme.inks.stripe, wide);
  }
  if (wide < NEAR) return;
  const isRound = timber.lines.length === 1;
  context.beginPath();
  segment(0, long, -wide * (isRound ? 0.2 : 0.38));
  stroke(theme.shine, wide * (isRound ? 0.2 : 0.1));
  context.beginPath();
  segment(0, long, wide * 0.37);
  stroke(theme.shade, wide * 0.26);
  context.beginPath();
  segment(0, long, wide * 0.44);
  stroke(theme.shade, wide * 0.12);
  grain(context, segment, { long, wide, scale, theme });
  const sawn = Math.max(1.6, SAWN * scale);
  context.beginPath();
  segment(0, sawn);
  segment(long - sawn, long);
  stroke(theme.shade, wide);
}

/** Quiet lines along the wood, each broken at its own places. */
function grain(
  context: CanvasRenderingContext2D,
  segment: (start: number, end: number, aside: number) => void,
  {
    long,
    wide,
    scale,
    theme,
  }: { readonly long: number; readonly wide: number; readonly scale: number } & Pick<DrawContext, 'theme'>,
): void {
  context.strokeStyle = theme.shade;
  context.lineWidth = Math.max(0.5, wide * 0.03);
  const rows = wide < 2 * NEAR ? [-0.06, 0.16] : [-0.3, -0.08, 0.05, 0.2];
  for (const [index, row] of rows.entries()) {
    context.setLineDash([0.7, 0.12, 0.35, 0.3, 1.1, 0.2].map((part) => part * (1 + 0.13 * index) * scale));
    context.lineDashOffset = -0.37 * index * scale;
    context.beginPath();
    segment(0.05 * scale, long - 0.05 * scale, row * wide);
    context.stroke();
  }
  context.setLineDash([]);
  context.lineDashOffset = 0;
}

function hasCup(piece: PlacedPiece, end: 'start' | 'end'): boolean {
  return piece.kind.handling?.fittings?.(piece.piece.values).some((each) => each.end === end) ?? false;
}
