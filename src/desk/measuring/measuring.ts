import type { Wall } from '../../core/constraints/constraint.ts';
import { gapDimension } from '../../core/constraints/gap.ts';
import { grippedWall, lineAngle } from '../../core/constraints/grip.ts';
import type { PlacedPiece } from '../../core/course/placed.ts';
import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import type { Radians } from '../../core/measure/quantity.ts';
import { distance, type Point, point } from '../../core/plane/point.ts';
import { toLocal, toWorld } from '../../core/plane/pose.ts';
import type { Ring } from '../../core/plane/ring.ts';
import { edges } from '../../core/plane/ring.ts';
import { nearestFraction, ringPointDistance } from '../../core/plane/segment.ts';
import type { Survey } from '../../core/survey.ts';
import { messages } from '../../words/desk.ts';
import { deskNames } from '../../words/desk-names.ts';
import {
  gapCandidate,
  heldAt,
  isKept,
  isLong,
  nearestPair,
  offWallCandidate,
} from '../constraints/constraint-candidates.ts';
import { pairSuggestions } from '../constraints/constraint-suggestions.ts';
import type { KeepSuggestion } from '../constraints/pending.ts';
import type { PointerInput } from '../input.ts';
import { nameOf } from '../names.ts';
import { pieceUnderPoint } from '../selection/hit.ts';
import { chosenPieces, type Keys } from '../selection/selection.ts';
import type { TapeEnd, TapeReading, TapeState } from './tape.ts';
import { EMPTY_TAPE } from './tape.ts';

/** Fractions of a pole to which the tape snaps: its ends, its middle, thirds. */
const PLACES = [0, 1 / 3, 1 / 2, 2 / 3, 1];
const WALLS: readonly Wall[] = ['south', 'east', 'north', 'west'];

/** What an end of the tape is attached to: a piece, a wall, or bare ground. */
export function tapeEndAt(
  survey: Survey,
  { at, pickRadius, isSnapOff }: Pick<PointerInput, 'at' | 'pickRadius' | 'isSnapOff'>,
): TapeEnd {
  const piece = pieceUnderPoint(survey, at, pickRadius);
  if (piece !== null) {
    if (!isLong(piece)) return { on: 'piece', key: piece.key, at: 0.5 };
    const local = toLocal(piece.pose, { ...at, angle: 0 });
    const part = Math.min(1, Math.max(0, local.x / piece.figure.length + 0.5));
    const [near = part] = [...PLACES].sort((a, b) => Math.abs(a - part) - Math.abs(b - part));
    const isNear = !isSnapOff && Math.abs(near - part) * piece.figure.length <= pickRadius;
    return { on: 'piece', key: piece.key, at: isNear ? near : part };
  }
  const { length, width } = survey.course.arena;
  const off: Readonly<Record<Wall, number>> = { south: at.y, west: at.x, north: width - at.y, east: length - at.x };
  const wall = WALLS.find((each) => off[each] <= pickRadius);
  return wall === undefined ? { on: 'ground', at } : { on: 'wall', wall, at };
}

/** The two ends that are chosen, for the key: the nearest pieces of two things, or of one and the wall next to it. */
export function tapeEndsOf(survey: Survey, chosen: Keys): TapeState {
  const [one, other, more] = chosen.map((key) => chosenPieces(survey, [key])).filter((list) => list.length > 0);
  if (one === undefined || more !== undefined) return EMPTY_TAPE;
  const end = (piece: PlacedPiece): TapeEnd => ({ on: 'piece', key: piece.key, at: 0.5 });
  if (other === undefined) {
    const [piece, rest] = one;
    return piece === undefined || rest !== undefined ? EMPTY_TAPE : { from: end(piece), to: null, isLaid: false };
  }
  const pair = nearestPair(one, other);
  return pair === null ? EMPTY_TAPE : { from: end(pair[0]), to: end(pair[1]), isLaid: true };
}

function pieceOn(survey: Survey, end: TapeEnd): PlacedPiece | undefined {
  return end.on === 'piece' ? survey.pieces.find((each) => each.key === end.key) : undefined;
}

function nearestOn(ring: Ring, to: Point): Point {
  const [best] = edges(ring)
    .map((edge) => {
      const part = nearestFraction(edge, to);
      const [a, b] = edge;
      return point(a.x + part * (b.x - a.x), a.y + part * (b.y - a.y));
    })
    .sort((a, b) => distance(a, to) - distance(b, to));
  return best ?? to;
}

/** The shortest straight between two outlines: from a corner of the one to the other. */
function shortest(first: Ring, second: Ring): readonly [Point, Point] {
  const ways = [
    ...first.map((corner) => [corner, nearestOn(second, corner)] as const),
    ...second.map((corner) => [nearestOn(first, corner), corner] as const),
  ];
  return ways.sort((a, b) => distance(...a) - distance(...b))[0] ?? [point(0, 0), point(0, 0)];
}

/** Where on the ground an end that is no piece lies. */
function spotOf(survey: Survey, end: TapeEnd): Point {
  if (end.on !== 'wall') return end.on === 'ground' ? end.at : point(0, 0);
  const { pose } = grippedWall(survey.course.arena, end.wall);
  return toWorld(pose, { x: toLocal(pose, { ...end.at, angle: 0 }).x, y: 0 });
}

function directionOf(survey: Survey, end: TapeEnd): Radians | null {
  if (end.on === 'wall') return grippedWall(survey.course.arena, end.wall).pose.angle;
  const piece = pieceOn(survey, end);
  return piece !== undefined && isLong(piece) ? piece.pose.angle : null;
}

function tapeBetween(survey: Survey, from: TapeEnd, to: TapeEnd): readonly [Point, Point] {
  const [first, second] = [pieceOn(survey, from), pieceOn(survey, to)];
  if (first !== undefined && second !== undefined) {
    if (from.on !== 'piece' || to.on !== 'piece' || !isLong(first) || !isLong(second)) {
      return shortest(first.footprint, second.footprint);
    }
    const gap = gapCandidate(first, second, [from.at, to.at]);
    return gap === null
      ? shortest(first.footprint, second.footprint)
      : gapDimension([heldAt(first, from.at), heldAt(second, to.at)]);
  }
  if (second !== undefined) {
    const [a, b] = tapeBetween(survey, to, from);
    return [b, a];
  }
  if (first === undefined)
    return to.on === 'wall' ? squareTo(survey, spotOf(survey, from), to) : flat(survey, from, to);
  if (to.on === 'wall') {
    const { pose } = grippedWall(survey.course.arena, to.wall);
    const [corner] = [...first.footprint].sort(
      (a, b) => toLocal(pose, { ...a, angle: 0 }).y - toLocal(pose, { ...b, angle: 0 }).y,
    );
    return squareTo(survey, corner ?? point(first.pose.x, first.pose.y), to);
  }
  const spot = spotOf(survey, to);
  return ringPointDistance(first.footprint, spot) === 0 ? [spot, spot] : [nearestOn(first.footprint, spot), spot];
}

function flat(survey: Survey, from: TapeEnd, to: TapeEnd): readonly [Point, Point] {
  if (from.on !== 'wall') return [spotOf(survey, from), spotOf(survey, to)];
  const [a, b] = squareTo(survey, spotOf(survey, to), from);
  return [b, a];
}

function squareTo(survey: Survey, at: Point, { wall }: Extract<TapeEnd, { on: 'wall' }>): readonly [Point, Point] {
  const { pose } = grippedWall(survey.course.arena, wall);
  return [at, toWorld(pose, { x: toLocal(pose, { ...at, angle: 0 }).x, y: 0 })];
}

/** The name of what an end of the tape is attached to. */
export function tapeEndName(survey: Survey, end: TapeEnd): string {
  if (end.on === 'piece') return nameOf(survey, end.key);
  return end.on === 'wall' ? deskNames.theWall(end.wall) : deskNames.placeOnGround;
}

function tapeSuggestion(survey: Survey, from: TapeEnd, to: TapeEnd): KeepSuggestion | null {
  const { arena, unit } = survey.course;
  const [first, second] = [pieceOn(survey, from), pieceOn(survey, to)];
  const suggestion = ((): KeepSuggestion | null => {
    if (first !== undefined && second !== undefined && from.on === 'piece' && to.on === 'piece') {
      const isPair = isLong(first) && isLong(second);
      const gap = isPair ? gapCandidate(first, second, [from.at, to.at]) : null;
      if (gap === null) return pairSuggestions([first, second], { unit, name: 'them' })[0] ?? null;
      return { says: messages.keepApart('them', printLength(gap.value, unit)), draft: gap.draft };
    }
    const wall = from.on === 'wall' ? from.wall : to.on === 'wall' ? to.wall : undefined;
    const piece = first ?? second;
    const off = wall === undefined || piece === undefined ? null : offWallCandidate([piece], wall, arena);
    if (off === null || wall === undefined || off.value < 0) return null;
    return { says: messages.keepOff('it', printLength(off.value, unit), wall), draft: off.draft };
  })();
  return suggestion === null || isKept(survey, suggestion.draft) ? null : suggestion;
}

/** What the tape reads between its two ends; null while it has only one. */
export function tapeReading(survey: Survey, { from, to, isLaid }: TapeState): TapeReading | null {
  if (from === null || to === null) return null;
  if (from.on === 'piece' && to.on === 'piece' && from.key === to.key) return null;
  const tape = tapeBetween(survey, from, to);
  const length = distance(...tape);
  const directions = [directionOf(survey, from), directionOf(survey, to)];
  const [one, other] = directions;
  const angle = one == null || other == null ? null : Math.abs(lineAngle(other - one));
  const text = printLength(length, survey.course.unit);
  const isInside = from.on === 'piece' && to.on === 'piece';
  const names = [tapeEndName(survey, from), tapeEndName(survey, to)] as const;
  const says = messages.measured(text, { names, angle: angle === null ? null : printAngle(angle), isInside });
  return { tape, length, angle, text, says, suggestion: isLaid ? tapeSuggestion(survey, from, to) : null };
}
