import { pieceWords } from '../../checks/findings/thing-words.ts';
import type { PlacedPiece } from '../../course/placed.ts';
import { printLength } from '../../measure/length.ts';
import type { LengthUnit, Metres } from '../../measure/quantity.ts';
import { obstacleKind } from '../../obstacles/obstacles.ts';
import { distance, type Point } from '../../plane/point.ts';
import type { Survey } from '../../survey.ts';
import { andList } from '../../text/sentence.ts';
import { isSmall, placeOn, sideOf } from '../observables.ts';
import { pieceNamed } from './adjust-equations.ts';

/** An end of a pole is moved across it, or the whole pole. */
export interface PoleMove {
  readonly key: string;
  /** The end that is moved: 0 its −x end, 1 its +x end; absent: both alike. */
  readonly end?: 0 | 1;
  /** Across the pole, towards its +y side where positive, metres. */
  readonly by: Metres;
}

export interface MoveNames {
  /** Letters of the ends of long pieces, `[at 0, at 1]`, by key; absent: A and B of every pole. */
  readonly letters?: ReadonlyMap<string, readonly [string, string]>;
  /** Keys of the poles with which each pole has a gap. */
  readonly neighbours: ReadonlyMap<string, readonly string[]>;
}

/** Middle lines that miss the point where the others meet by more than this do not meet there, metres. Estimate. */
const MISSED: Metres = 0.5;
/** Poles of which the two directions that differ most differ by less are parallel: sine of 5°. Estimate. */
const SPREAD = 0.087;

/**
 * Where the middle lines of an obstacle's poles meet, as those of a fan and of a spoke do: beyond one end of each of them.
 * Undefined where they do not, or where there are fewer than three.
 */
function meetingPoint(poles: readonly PlacedPiece[]): Point | undefined {
  if (poles.length < 3) return undefined;
  let [xx, xy, yy, bx, by] = [0, 0, 0, 0, 0];
  for (const { pose } of poles) {
    const [nx, ny] = [-Math.sin(pose.angle), Math.cos(pose.angle)];
    const off = nx * pose.x + ny * pose.y;
    xx += nx * nx;
    xy += nx * ny;
    yy += ny * ny;
    bx += nx * off;
    by += ny * off;
  }
  const determinant = xx * yy - xy * xy;
  if (determinant < (poles.length * SPREAD) ** 2 / 4) return undefined;
  const point = { x: (yy * bx - xy * by) / determinant, y: (xx * by - xy * bx) / determinant };
  const meets = poles.every(({ pose, figure }) => {
    const [dx, dy] = [point.x - pose.x, point.y - pose.y];
    const along = Math.cos(pose.angle) * dx + Math.sin(pose.angle) * dy;
    const off = Math.cos(pose.angle) * dy - Math.sin(pose.angle) * dx;
    return Math.abs(off) < MISSED && Math.abs(along) > figure.length / 2 - MISSED;
  });
  return meets ? point : undefined;
}

/** "the outer end (B)" where the poles spread from a point, else "end B". */
function endWords(survey: Survey, { key, end = 0 }: PoleMove, letters: MoveNames['letters']): string {
  const pole = pieceNamed(survey, key);
  const letter = (letters?.get(key) ?? (['A', 'B'] as const))[end];
  const owner = survey.layout.obstacles.find(({ id }) => id === pole.obstacle);
  const isOverPoles = obstacleKind(owner?.kind ?? '')?.family === 'poles';
  const poles = survey.pieces.filter((each) => each.obstacle === pole.obstacle && !isSmall(each));
  const centre = isOverPoles ? meetingPoint(poles) : undefined;
  if (centre === undefined) return `end ${letter}`;
  const [own, other] = [placeOn(pole, end), placeOn(pole, 1 - end)];
  return `the ${distance(own, centre) < distance(other, centre) ? 'inner' : 'outer'} end (${letter})`;
}

/** "pole 2" of its own obstacle. */
function shortName(survey: Survey, key: string): string {
  return pieceWords(survey, key).split(' of ')[0] as string;
}

/**
 * "out by 1½"" away from all that it has a gap with, "in by 1½"" towards it; between two, "1½" towards pole 2".
 */
function directionWords(survey: Survey, { key, by }: PoleMove, { neighbours }: MoveNames, far: string): string {
  const pole = pieceNamed(survey, key);
  const others = neighbours.get(key) ?? [];
  const isAhead = (other: string): boolean => sideOf(pole, pieceNamed(survey, other).pose) === Math.sign(by);
  const towards = others.filter(isAhead);
  if (towards.length === 0) return `out by ${far}`;
  if (towards.length === others.length) return `in by ${far}`;
  return `${far} towards ${andList(towards.map((other) => shortName(survey, other)))}`;
}

/** How far something is moved: to the half inch, or to the centimetre. */
function moveLength(by: Metres, unit: LengthUnit): string {
  return unit === 'ft' ? printLength(Math.abs(by), unit) : `${Math.round(Math.abs(by) * 100)} cm`;
}

/** "Move the outer end (B) of pole 3 of the fan (obstacle 2) out by 1½"." The survey is the one as built. */
export function moveSentence(survey: Survey, move: PoleMove, names: MoveNames): string {
  const what = pieceWords(survey, move.key);
  const subject = move.end === undefined ? what : `${endWords(survey, move, names.letters)} of ${what}`;
  const alike = move.end === undefined ? ', both ends alike' : '';
  return `Move ${subject} ${directionWords(survey, move, names, moveLength(move.by, survey.course.unit))}${alike}.`;
}
