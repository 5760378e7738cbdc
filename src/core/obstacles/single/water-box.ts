import { numberValue } from '../../pieces/params.ts';
import { waterBoxPiece as waterPiece } from '../../pieces/water-box.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { CLEAR_DISTANCE, pieceOfKind } from '../parts.ts';
import { straightOver } from './straight-over.ts';

/** A pan of water to walk through. Frame: the pan's own, ridden along x. Nothing to hold. */
export const waterBox: ObstacleKind = {
  id: 'water-box',
  title: 'Water box',
  alsoCalled: ['pan', 'pool', 'wet'],
  family: 'work',
  about: 'A shallow pan of water to walk through.',
  words: { noun: 'water', ridden: 'through {}' },
  params: waterPiece.params,
  build(values) {
    const piece = pieceOfKind('water', 'water-box', values, { x: 0, y: 0, angle: 0 });
    const length = numberValue(piece.values, 'length');
    const passages = straightOver('water', length / 2 + CLEAR_DISTANCE, 'through the water');
    return { kind: 'built', pieces: [piece], constraints: [], passages, facts: { length } };
  },
};
