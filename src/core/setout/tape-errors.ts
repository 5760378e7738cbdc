import data from '../../../assets/crew/tape.json' with { type: 'json' };
import type { ObservationKind } from '../constraints/constraint.ts';
import type { Sourced } from '../horses/horse.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import type { SetOutCrew } from './setout.ts';

/** What is assumed of tapes and of the hands that use them. Standard errors in metres or radians, unless a line says otherwise. */
export interface TapeData {
  /** To bring a face to a mark of the tape. */
  readonly read: Sourced;
  /** The zero end, held by a second person, and by a nail or a weight. */
  readonly holdTwo: Sourced;
  readonly holdAlone: Sourced;
  /** What a thing shifts when it is bedded. */
  readonly bed: Sourced;
  /** Of the tape itself: its greatest error is the first, and the second for each metre. */
  readonly tapeFixed: Sourced;
  readonly tapeShare: Sourced;
  /** A tape on raked ground, for each metre. */
  readonly bow: Sourced;
  /** Newtons a metre, and newtons. */
  readonly weight: Sourced;
  readonly pull: Sourced;
  readonly alongPole: Sourced;
  readonly sight: Sourced;
  readonly sightShare: Sourced;
  readonly against: Sourced;
  readonly board: Sourced;
  readonly byEye: Sourced;
  readonly relay: Sourced;
  readonly scratch: Sourced;
}

// JSON widens a grade to string; tests/core/setout/tape-errors.test.ts looks at every grade, source and bound.
export const USUAL_TAPE = data as TapeData;

/** The legs of the largest 3 : 4 : 5 triangle that fits on poles and tape, in units of a leg of 3; metres. */
export function triangleUnit(shorter: Metres, longer: Metres, tape: Metres): Metres {
  return Math.min(shorter / 3, longer / 4, tape / 5);
}

/** How much a tape that hangs free reads too much: w²L³/24P² (any surveying handbook). */
export function sag(length: Metres, { weight, pull }: Pick<TapeData, 'weight' | 'pull'> = USUAL_TAPE): Metres {
  return (weight.value ** 2 * length ** 3) / (24 * pull.value ** 2);
}

/** The share of the sag that counts as a standard error: over most of its length a tape lies on the ground. Estimate. */
const SHARE_OF_SAG = 0.3;

/** Of one taped length, without the hands at its ends: independent parts add as squares. A short tape is laid again from its end. */
function ofTape(length: Metres, tape: Metres): Metres {
  const { tapeFixed, tapeShare, bow, relay } = USUAL_TAPE;
  const lays = Math.max(1, Math.ceil(length / tape - 1e-9));
  const each = length / lays;
  // A greatest error with every value up to it equally likely has a standard error of it over √3.
  const own = (tapeFixed.value + tapeShare.value * each) / Math.sqrt(3);
  const one = Math.hypot(own, SHARE_OF_SAG * sag(each));
  // The ground is as uneven for a tape that is laid again.
  return Math.hypot(Math.sqrt(lays) * one, Math.sqrt(lays - 1) * relay.value, bow.value * length);
}

/** Room for the legs of a triangle at a wall, metres: a crew marks out no larger one. Estimate. */
const ALONG_WALL = [3, 4] as const;

/** What the standard error of one observation depends on beside its kind. */
export interface Circumstances {
  /** What the tape reads, or the distance over which is sighted, metres. */
  readonly length: Metres;
  /** How much the value changes for each metre by which the tape lies wrong along the pieces. */
  readonly slope: number;
  /** Off the wall of a length along it; of a right angle the legs of its triangle in units of a leg of 3. Metres. */
  readonly reach: Metres;
}

/** Standard error of one observation by a crew, with bedding the piece; metres, of `square` radians. */
export function observationError(
  kind: ObservationKind,
  { length, slope, reach }: Circumstances,
  crew: SetOutCrew,
): number {
  const { read, bed, alongPole, sight, sightShare, against } = USUAL_TAPE;
  const hold = crew.people > 1 ? USUAL_TAPE.holdTwo.value : USUAL_TAPE.holdAlone.value;
  const taped = Math.hypot(read.value, hold, bed.value, ofTape(Math.abs(length), crew.tape), slope * alongPole.value);
  switch (kind) {
    case 'square':
      return Math.hypot(rightAngleError(crew, reach), bed.value);
    case 'against':
      return Math.hypot(against.value, bed.value);
    case 'level':
    case 'in-line':
      return Math.hypot(sight.value, sightShare.value * Math.abs(reach), bed.value);
    case 'ahead':
      return Math.hypot(taped, sight.value, sightShare.value * reach);
    case 'along-wall':
      return Math.hypot(taped, rightAngleError(crew, triangleUnit(...ALONG_WALL, crew.tape)) * reach);
    default:
      return taped;
  }
}

/**
 * Standard error of a right angle, radians. A triangle of sides a, b, c with the same error s of each is wrong by
 * s·√(a² + b² + c²)/ab; `unit` is a third of its shorter leg, metres.
 */
export function rightAngleError(crew: SetOutCrew, unit: Metres): Radians {
  if (crew.rightAngle === 'board') return USUAL_TAPE.board.value;
  const { read } = USUAL_TAPE;
  const hold = crew.people > 1 ? USUAL_TAPE.holdTwo.value : USUAL_TAPE.holdAlone.value;
  const side = Math.hypot(read.value, hold);
  // c² = a² + b² − 2ab·cos γ at γ = 90°: dγ = (c·dc − a·da − b·db)/ab.
  return (side * Math.sqrt(3 ** 2 + 4 ** 2 + 5 ** 2)) / (3 * 4 * unit);
}

/** Tapes that are pulled straight to a point: where two of them meet, a crew with one tape scratches the arc of the first. */
export function isStraight(kind: ObservationKind): boolean {
  return kind === 'between' || kind === 'from-rail';
}
