import type { Metres } from '../../measure/quantity.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { POLE_PARAMS, pieceOfKind, poseStation } from '../parts.ts';
import type { Passage } from '../passage.ts';
import { SIDE_PASSING_LIMITS } from '../traits.ts';

/** From a pole's end to the middle of the hoof base when the near hooves are past it. Estimate. */
export const PAST_END: Metres = 0.5;

/**
 * The four ways to side pass along a pole that lies along x, the horse's middle on the line `y` of the pole's frame:
 * heading +y, going to its left (−x) or right; and the same heading −y. `what` completes "side pass left …".
 */
export function sidePassages(piece: string, line: { length: Metres; y: Metres; what: string }): Passage[] {
  const far = line.length / 2 + PAST_END;
  return ([1, -1] as const).flatMap((facing) =>
    (['left', 'right'] as const).map((hand): Passage => {
      const from = facing * (hand === 'left' ? far : -far);
      const pose = (x: number) => ({ x, y: line.y, angle: (facing * Math.PI) / 2 });
      const where = facing === 1 ? '' : ', facing the other way';
      return {
        id: `${hand}${facing === 1 ? '' : '-return'}`,
        title: `side pass ${hand} ${line.what}${where}`,
        gaits: ['walk'],
        stations: [poseStation(piece, pose(from)), poseStation(piece, pose(-from), 'side-pass')],
      };
    }),
  );
}

/** One pole, passed over sideways with its length between fore and hind feet. Frame: the pole's own. Nothing to hold. */
export const sidePass: ObstacleKind = {
  id: 'side-pass',
  title: 'Side pass',
  alsoCalled: ['sidepass', 'lateral', 'leg yield'],
  family: 'side-passing',
  about: 'A pole to side pass over, front feet on one side and hind feet on the other.',
  params: POLE_PARAMS,
  limits: SIDE_PASSING_LIMITS,
  build(values) {
    const pole = pieceOfKind('pole-1', 'pole', values, { x: 0, y: 0, angle: 0 });
    const length = Number(pole.values.length);
    return {
      kind: 'built',
      pieces: [pole],
      constraints: [],
      passages: sidePassages('pole-1', { length, y: 0, what: 'over the pole' }),
      facts: { length },
    };
  },
};
