import { bridgePiece } from '../../pieces/bridge.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { CLEAR_DISTANCE, pieceOfKind } from '../parts.ts';
import { straightOver } from './straight-over.ts';

/** A deck to walk over. Frame: the bridge's own, ridden along x. Nothing to hold. */
export const bridge: ObstacleKind = {
  id: 'bridge',
  title: 'Bridge',
  alsoCalled: ['deck', 'platform'],
  family: 'work',
  about: 'A wooden deck to walk over, straight and calm.',
  params: bridgePiece.params,
  build(values) {
    const piece = pieceOfKind('bridge', 'bridge', values, { x: 0, y: 0, angle: 0 });
    const length = numberValue(piece.values, 'length');
    const passages = straightOver('bridge', length / 2 + CLEAR_DISTANCE, 'over the bridge');
    return { kind: 'built', pieces: [piece], constraints: [], passages, facts: { length } };
  },
};
