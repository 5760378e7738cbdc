/** What the companion draws of an act, turned the way the person faces: in pixels, y down. It knows no colours. */
import type { Arena } from '../../core/course/course.ts';
import type { PlacedPiece } from '../../core/course/placed.ts';
import type { Metres, Radians } from '../../core/measure/quantity.ts';
import { distance, type Point } from '../../core/plane/point.ts';
import { toWorld } from '../../core/plane/pose.ts';
import type { Ground } from '../../core/setout/ground.ts';
import { isSmall, placeOn } from '../../core/setout/observables.ts';
import { type TapeLine, tapeLine } from '../../core/setout/words/tape-lines.ts';
import type { Act, PartActs } from './acts.ts';

/** `held`: the tape is held to it. `laid`: it is laid now. `lies`: it lies already. */
export type PictureRole = 'held' | 'laid' | 'lies';

export interface PictureLetter {
  readonly text: string;
  readonly at: Point<'screen'>;
}

export interface PicturePiece {
  readonly key: string;
  readonly role: PictureRole;
  readonly ring: readonly Point<'screen'>[];
  readonly letters: readonly PictureLetter[];
  /** Clockwise from the right, the way it lies in the picture. */
  readonly turn: Radians;
}

export interface ActPicture {
  readonly walls: readonly Point<'screen'>[];
  readonly pieces: readonly PicturePiece[];
  /** From its zero end to what it reads. */
  readonly tape?: readonly [Point<'screen'>, Point<'screen'>];
  /** A line of sight, or square across from the tape. */
  readonly guide?: readonly Point<'screen'>[];
  /** Pixels a metre. */
  readonly scale: number;
}

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Room round what is shown, for letters, and below it for the buttons that turn it; pixels. */
const MARGIN = 36;
const BELOW = 76;
/** A pole is drawn no thinner, pixels. */
const LEAST_WIDTH = 9;
/** Larger than this a marker would fill the picture, pixels a metre. */
const MOST_SCALE = 90;
/** Letters stand so far past the ends, pixels. */
const PAST_END = 17;
/** Of the disc behind a letter, pixels. */
export const LETTER_RADIUS = 12;
/** Four letters in one place are apart after fewer. */
const ROUNDS = 20;

type ToScreen = (at: Point) => Point<'screen'>;
type Stroke = readonly [Point<'screen'>, Point<'screen'>];

/** The direction on the ground that is up in the picture, and the one to the right. */
function axesFacing(facing: Radians): readonly [up: Point, right: Point] {
  const [x, y] = [Math.cos(facing), Math.sin(facing)];
  return [
    { x, y },
    { x: y, y: -x },
  ];
}

/** The frame in which all of the points are seen, as large as fits. */
function frameOf(
  points: readonly Point[],
  facing: Radians,
  { width, height }: PictureSize,
): { readonly to: ToScreen; readonly scale: number } {
  const [up, right] = axesFacing(facing);
  const across = points.map(({ x, y }) => x * right.x + y * right.y);
  const ahead = points.map(({ x, y }) => x * up.x + y * up.y);
  const [minX, maxX, minY, maxY] = [Math.min(...across), Math.max(...across), Math.min(...ahead), Math.max(...ahead)];
  const room = { width: Math.max(1, width - 2 * MARGIN), height: Math.max(1, height - MARGIN - BELOW) };
  const least: Metres = 0.1;
  const scale = Math.min(
    room.width / Math.max(maxX - minX, least),
    room.height / Math.max(maxY - minY, least),
    MOST_SCALE,
  );
  const to: ToScreen = ({ x, y }) => ({
    x: width / 2 + (x * right.x + y * right.y - (minX + maxX) / 2) * scale,
    y: MARGIN + room.height / 2 - (x * up.x + y * up.y - (minY + maxY) / 2) * scale,
  });
  return { to, scale };
}

/** A long piece as a bar, wide enough to be seen; a small one as it is, or as a square that can be seen. */
function pieceRing(piece: PlacedPiece, { to, scale }: { readonly to: ToScreen; readonly scale: number }) {
  const { length, width } = piece.figure;
  const least = LEAST_WIDTH / scale;
  const isThin = isSmall(piece) ? Math.max(length, width) < 1.5 * least : width < least;
  if (!isThin) return piece.footprint.map(to);
  const halfWidth = isSmall(piece) ? 0.75 * least : least / 2;
  const halfLength = isSmall(piece) ? halfWidth : length / 2;
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ] as const;
  return corners.map(([x, y]) => to(toWorld(piece.pose, { x: x * halfLength, y: y * halfWidth })));
}

/** Straight past each end; to a side of it where the tape or what is sighted runs on past the end. */
function endLetters(
  piece: PlacedPiece,
  letters: readonly string[],
  { to, lines }: { readonly to: ToScreen; readonly lines: readonly Stroke[] },
): readonly PictureLetter[] {
  const middle = to(piece.pose);
  return letters.map((text, i) => {
    const end = to(placeOn(piece, i));
    const long = distance<'screen'>(middle, end) || 1;
    const [ux, uy] = [(end.x - middle.x) / long, (end.y - middle.y) / long];
    const places = [0, Math.PI / 2, -Math.PI / 2].map((turn) => {
      const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
      return { x: end.x + PAST_END * (ux * cos - uy * sin), y: end.y + PAST_END * (ux * sin + uy * cos) };
    });
    const clear = places.find((at) => lines.every((line) => strokeDistance(line, at) > LETTER_RADIUS + 2));
    return { text, at: clear ?? (places[0] as Point<'screen'>) };
  });
}

/** Lines that letters keep off: the tape, and what is sighted. */
function strokesOf(points: readonly Point<'screen'>[]): readonly Stroke[] {
  return points.slice(1).map((to, i) => [points[i] as Point<'screen'>, to]);
}

function strokeDistance([a, b]: Stroke, at: Point<'screen'>): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const share = ((at.x - a.x) * dx + (at.y - a.y) * dy) / (dx * dx + dy * dy || 1);
  const t = Math.min(1, Math.max(0, share));
  return distance<'screen'>(at, { x: a.x + t * dx, y: a.y + t * dy });
}

/** Letters of ends that lie close together, moved apart until none covers another. */
function apart(letters: readonly PictureLetter[]): readonly PictureLetter[] {
  const places = letters.map(({ at }) => ({ ...at }));
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [i, a] of places.entries()) {
      for (const b of places.slice(i + 1)) {
        const far = distance<'screen'>(a, b);
        if (far >= 2 * LETTER_RADIUS) continue;
        const push = (2 * LETTER_RADIUS - far) / 2;
        const [ux, uy] = far === 0 ? [1, 0] : [(b.x - a.x) / far, (b.y - a.y) / far];
        a.x -= push * ux;
        a.y -= push * uy;
        b.x += push * ux;
        b.y += push * uy;
      }
    }
  }
  return letters.map(({ text }, i) => ({ text, at: places[i] as Point<'screen'> }));
}

/** The tape with its zero end first: the end that is farther from what is laid. */
function fromZero([a, b]: readonly [Point, Point], laid: PlacedPiece): readonly [Point, Point] {
  return awayFrom(laid, a) >= awayFrom(laid, b) ? [a, b] : [b, a];
}

/** How far a point is from the middle line of a piece. */
function awayFrom({ pose, figure }: PlacedPiece, { x, y }: Point): Metres {
  const [ux, uy] = [Math.cos(pose.angle), Math.sin(pose.angle)];
  const along = (x - pose.x) * ux + (y - pose.y) * uy;
  const reach = Math.min(Math.max(along, -figure.length / 2), figure.length / 2);
  return distance({ x, y }, { x: pose.x + reach * ux, y: pose.y + reach * uy });
}

function wallCorners({ length, width }: Arena): readonly Point[] {
  return [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: length, y: width },
    { x: 0, y: width },
  ];
}

/** The picture of an act: what is held, what is laid, what lies already, and the tape between them. */
export function pictureOf(
  ground: Ground,
  { part }: Pick<PartActs, 'part'>,
  { act, facing, size }: { readonly act: Act; readonly facing: Radians; readonly size: PictureSize },
): ActPicture {
  const pieceAt = (key: string): PlacedPiece => {
    const piece = ground.pieces.get(key);
    if (piece === undefined) throw new Error(`pictureOf: there is no piece ${key}`);
    return piece;
  };
  const laid = pieceAt(act.step.piece);
  const held = new Set(act.of === undefined ? act.step.held : heldIn(act));
  const before = part.steps.filter(({ number }) => number < act.step.number).map(({ piece }) => piece);
  const shown = [...new Set([...before, ...[...held].filter((key) => ground.pieces.has(key)), laid.key])].map(pieceAt);
  const line: TapeLine = act.of === undefined ? {} : tapeLine(ground, act.of);
  const tape = line.tape === undefined ? undefined : fromZero(line.tape, laid);
  const near = shown.filter(({ key }) => key === laid.key || held.has(key));
  const seen = [...near.flatMap(({ footprint }) => footprint), ...(tape ?? []), ...(line.guide ?? [])];
  const frame = frameOf(seen, facing, size);
  const { to, scale } = frame;
  const lines = [...strokesOf((tape ?? []).map(to)), ...strokesOf((line.guide ?? []).map(to))];
  const drawn = shown.map((piece): PicturePiece => {
    const role: PictureRole = piece.key === laid.key ? 'laid' : held.has(piece.key) ? 'held' : 'lies';
    // Letters of what only lies there would stand in the way of those that count.
    const letters = role === 'lies' ? [] : (part.letters.get(piece.key) ?? []);
    const others = near.filter((each) => each !== piece && !isSmall(each));
    const kept = [...lines, ...others.flatMap((each) => strokesOf([placeOn(each, 0), placeOn(each, 1)].map(to)))];
    const [start, end] = [placeOn(piece, 0), placeOn(piece, 1)].map(to) as [Point<'screen'>, Point<'screen'>];
    const turn = Math.atan2(end.y - start.y, end.x - start.x);
    return {
      key: piece.key,
      role,
      ring: pieceRing(piece, frame),
      letters: endLetters(piece, letters, { to, lines: kept }),
      turn,
    };
  });
  const letters = apart(drawn.flatMap((piece) => piece.letters));
  return {
    walls: wallCorners(ground.arena).map(to),
    pieces: drawn.map((piece) => {
      const own = piece.letters.map(({ text }) => text);
      return { ...piece, letters: letters.filter(({ text }) => own.includes(text)) };
    }),
    ...(tape && { tape: [to(tape[0]), to(tape[1])] as const }),
    ...(line.guide && { guide: line.guide.map(to) }),
    scale,
  };
}

/** What an observation is made to, other than what is laid: a check may be held to another piece than its step. */
function heldIn({ of, step }: Act): readonly string[] {
  return (of?.grips ?? []).flatMap((grip) => ('piece' in grip && grip.piece !== step.piece ? [grip.piece] : []));
}
