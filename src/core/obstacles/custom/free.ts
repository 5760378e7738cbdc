import type { ObstacleKind } from '../obstacle.ts';
import { pieceOfKind } from '../parts.ts';
import { passagesThrough } from './grouped.ts';

/**
 * An obstacle made by hand: only its pieces say what it is. A new one is a single pole along x; `groupPieces` makes one
 * of pieces that lie there already. It has no constraints.
 */
export const free: ObstacleKind = {
  id: 'free',
  title: 'Own obstacle',
  alsoCalled: ['custom', 'free', 'single pole', 'log'],
  family: 'scenery',
  about: 'Pieces laid by hand: one pole to begin with, or whatever is gathered into it.',
  params: {},
  build() {
    const pieces = [pieceOfKind('pole-1', 'pole', {}, { x: 0, y: 0, angle: 0 })];
    return {
      kind: 'built',
      pieces,
      constraints: [],
      passages: passagesThrough(pieces, ['pole-1'], 'over the pole'),
      facts: {},
    };
  },
};
