import type { PlacedObstacle, PlacedPiece } from '../../../core/course/placed.ts';
import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import type { Mark } from '../../../core/plane/mark.ts';
import { screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { paintMarks } from './marks.ts';
import { movedMarks } from './moved-marks.ts';
import { paintTimber, type SeenTimber, seenTimber, shadowOf, traceTimberShadow } from './timber.ts';

/** What stands throws a shadow as if it were this part as high, so that a tall thing does not hide its neighbour. */
const SEEN_HEIGHT = 0.22;
const MOST_SHADOW = 14;
/** Seams of a deck are drawn at least so far apart, pixels. */
const SEAMS_APART = 5;

const marksOf = memoizeByIdentity((piece: PlacedPiece): readonly Mark[] => movedMarks(piece.figure.marks, piece.pose));

const decksFirst = memoizeByIdentity(({ pieces }: PlacedObstacle): readonly PlacedPiece[] =>
  pieces.toSorted((a, b) => Number(b.figure.stands === 'deck') - Number(a.figure.stands === 'deck')),
);

export function paintObstacles(
  context: CanvasRenderingContext2D,
  { obstacles }: { readonly obstacles: readonly PlacedObstacle[] },
  eye: DrawContext,
): void {
  for (const obstacle of obstacles) paintPieces(context, decksFirst(obstacle), eye);
}

/** Pieces on the ground, in their order, with the shadows of all of them below the first. */
function paintPieces(context: CanvasRenderingContext2D, pieces: readonly PlacedPiece[], eye: DrawContext): void {
  const seen = pieces.map((piece) => ({ piece, timber: seenTimber(piece, eye) }));
  context.beginPath();
  for (const each of seen) traceShadow(context, each, eye);
  context.fillStyle = eye.theme.shadow;
  context.fill();
  for (const { piece, timber } of seen) {
    if (timber === undefined) paintMarks(context, distinctMarks(piece, eye), eye);
    else paintTimber(context, timber, eye);
  }
}

/** The marks of a piece; of a deck's seams only as many as are told apart. */
function distinctMarks(piece: PlacedPiece, { camera }: DrawContext): readonly Mark[] {
  const marks = marksOf(piece);
  if (piece.figure.stands !== 'deck') return marks;
  const seams = marks.filter(isSeam).length;
  const every = Math.ceil(SEAMS_APART / ((piece.figure.length / (seams + 1)) * camera.scale));
  if (every <= 1) return marks;
  let count = 0;
  return marks.filter((mark) => !isSeam(mark) || count++ % every === every - 1);
}

function isSeam(mark: Mark): boolean {
  return mark.kind === 'line' && mark.ink === 'outline' && mark.points.length === 2;
}

function traceShadow(
  context: CanvasRenderingContext2D,
  { piece, timber }: { readonly piece: PlacedPiece; readonly timber: SeenTimber | undefined },
  { camera }: DrawContext,
): void {
  if (timber !== undefined) {
    traceTimberShadow(context, timber);
    return;
  }
  const high = Math.min(MOST_SHADOW, Math.max(1.6, piece.figure.height * SEEN_HEIGHT * camera.scale));
  piece.footprint.forEach((corner, index) => {
    const { x, y } = shadowOf(screenOf(camera, corner), high);
    if (index === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  });
  context.closePath();
}
