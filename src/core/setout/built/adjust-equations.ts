import type { PlacedPiece } from '../../course/placed.ts';
import { memoizeByIdentity } from '../../memo/by-identity.ts';
import type { Pose } from '../../plane/pose.ts';
import type { Residual } from '../../solve/problem.ts';
import type { Survey } from '../../survey.ts';
import { type Ground, observedOn } from '../ground.ts';
import { isSmall } from '../observables.ts';
import type { Observable } from '../setout.ts';
import type { ObservationEquation } from './adjust-least-squares.ts';

/** Keys of the pieces that an observable grips, in the order of its grips; walls are left out. */
export function grippedPieces({ grips }: Pick<Observable, 'grips'>): readonly string[] {
  return grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : []));
}

/** Whether the tape goes to a wall. */
export function touchesWall({ grips }: Pick<Observable, 'grips'>): boolean {
  return grips.some((grip) => 'wall' in grip);
}

/** The arena and the pieces of a survey, as observations see them. */
export const groundOf = memoizeByIdentity(
  ({ course, pieces }: Survey): Ground => ({
    arena: course.arena,
    pieces: new Map(pieces.map((piece) => [piece.key, piece])),
  }),
);

/** A piece of a survey by its key; throws where there is none. */
export function pieceNamed(survey: Survey, key: string): PlacedPiece {
  const piece = groundOf(survey).pieces.get(key);
  if (piece === undefined) throw new Error(`the layout has no piece ${key}`);
  return piece;
}

/** The unknowns of some pieces: x, y and angle of each, one piece after the other. */
function unknownsOf(keys: readonly string[], key: string): readonly [number, number, number] | undefined {
  const at = 3 * keys.indexOf(key);
  return at < 0 ? undefined : [at, at + 1, at + 2];
}

function poseAt(place: number, values: readonly number[]): Pose {
  return { x: values[place] as number, y: values[place + 1] as number, angle: values[place + 2] as number };
}

/** The poses that the values of the unknowns mean. */
export function posesOf(keys: readonly string[], values: readonly number[]): ReadonlyMap<string, Pose> {
  return new Map(keys.map((key, i) => [key, poseAt(3 * i, values)]));
}

/** The unknowns that an observable depends on, where `keys` are the pieces that are not known. */
export function observableUnknowns(keys: readonly string[], observable: Observable): readonly number[] {
  return grippedPieces(observable).flatMap((key) => unknownsOf(keys, key) ?? []);
}

/**
 * The slopes of an observable by the unknowns that it depends on. No tape tells how a small thing is turned: it keeps its
 * heading, and an observation that its corners would change has no slope by it.
 */
export function observableGradient(
  survey: Survey,
  keys: readonly string[],
  { grips }: Observable,
  { gradient }: Residual,
): readonly number[] {
  return grips.flatMap((grip, i) => {
    if ('wall' in grip || !keys.includes(grip.piece)) return [];
    const [x = 0, y = 0, turn = 0] = gradient[i] ?? [];
    return [x, y, isSmall(pieceNamed(survey, grip.piece)) ? 0 : turn];
  });
}

/** The equation of a reading for the poses of the pieces `keys`. */
export function readingEquation(
  survey: Survey,
  keys: readonly string[],
  reading: Observable & { readonly read: number; readonly sigma: number },
): ObservationEquation {
  const ground = groundOf(survey);
  const own = grippedPieces(reading).filter((key) => keys.includes(key));
  return {
    unknowns: observableUnknowns(keys, reading),
    observed: reading.read,
    sigma: reading.sigma,
    at(values) {
      const poses = new Map(own.map((key) => [key, poseAt(3 * keys.indexOf(key), values)]));
      const there = observedOn(ground, reading, poses);
      return { value: there.value, gradient: observableGradient(survey, keys, reading, there) };
    },
  };
}

/** The equation by which one unknown is as it was drawn, so sure. */
export function drawnEquation(unknown: number, drawn: number, sigma: number): ObservationEquation {
  return {
    unknowns: [unknown],
    observed: drawn,
    sigma,
    at: (values) => ({ value: values[unknown] as number, gradient: [1] }),
  };
}
