import type { LengthUnit, Metres } from '../../measure/quantity.ts';
import { INCH } from '../../measure/quantity.ts';
import type { Pose } from '../../plane/pose.ts';
import { type Ground, observedOn } from '../ground.ts';
import type { Observable, Observation } from '../setout.ts';
import { inverse, type Matrix, timesMatrix } from './placement.ts';

/** The finest reading that a crew is asked for. */
export const TAPE_STEP: Readonly<Record<LengthUnit, Metres>> = { ft: INCH / 4, m: 0.005 };

/** A value as the tape can show it; an angle stays what it is. */
export function roundedReading({ kind }: Observable, exact: number, marked: LengthUnit): number {
  if (kind === 'square') return 0;
  const step = TAPE_STEP[marked];
  // Adding 0 makes −0 plain: it is written into files.
  return Math.round(exact / step) * step + 0;
}

/** What an observation has to come to: its gradient by the pose of one piece. */
function ownSlope(of: Observable, piece: string, gradient: readonly (readonly [number, number, number])[]) {
  const [first] = of.grips;
  return ('piece' in first && first.piece === piece ? gradient[0] : gradient[1]) ?? ([0, 0, 0] as const);
}

const KEEPS_TURN = [0, 0, 1] as const;

/**
 * Where a piece comes to lie when its observations read what they should, with the others at `poses`: Newton's method from
 * where it is drawn. Two observations keep its heading. Throws when it does not converge: the readings cannot all be had.
 */
export function laidBy(
  ground: Ground,
  piece: string,
  observations: readonly Pick<Observation, 'kind' | 'grips' | 'side' | 'from' | 'runs' | 'reading'>[],
  poses: ReadonlyMap<string, Pose>,
): Pose {
  const drawn = ground.pieces.get(piece)?.pose;
  if (drawn === undefined) throw new Error(`set-out: there is no piece ${piece}`);
  let pose = drawn;
  for (let iteration = 0; iteration < 30; iteration += 1) {
    const here = new Map(poses).set(piece, pose);
    const seen = observations.map((each) => {
      const { value, gradient } = observedOn(ground, each, here);
      return { off: value - each.reading, slope: ownSlope(each, piece, gradient) };
    });
    const rows = seen.length === 2 ? [...seen, { off: pose.angle - drawn.angle, slope: KEEPS_TURN }] : seen;
    const gain = inverse(rows.map(({ slope }) => slope) as unknown as Matrix);
    if (gain === undefined) break;
    const [dx, dy, turn] = timesMatrix(rows.map((row) => row.off) as unknown as Matrix[0], transposed(gain));
    pose = { x: pose.x - dx, y: pose.y - dy, angle: pose.angle - turn };
    if (Math.max(Math.abs(dx), Math.abs(dy), Math.abs(turn)) < 1e-12) return pose;
  }
  throw new Error(`set-out: the readings of ${piece} cannot all be had at once`);
}

/** The transpose: row times it is the matrix times a column. */
function transposed([a, b, c]: Matrix): Matrix {
  return [
    [a[0], b[0], c[0]],
    [a[1], b[1], c[1]],
    [a[2], b[2], c[2]],
  ];
}
