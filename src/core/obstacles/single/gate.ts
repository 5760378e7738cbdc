import { gatePiece } from '../../pieces/gate.ts';
import { choiceValue, numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { BESIDE, pieceOfKind, poseStation } from '../parts.ts';
import type { Passage } from '../passage.ts';

/** The rider's hand is this much before the middle of the hoof base; and how far on counts as clear. Estimates. */
const HAND_AHEAD = 0.2;
const CLEAR = 1.5;
/** So far a horse backs to pull a gate open, and so much further off the gate it then stands. Estimates. */
const PULLED = 0.9;
const ASIDE = 1.4;

/**
 * A gate worked from the saddle. Frame: the gate's own, shut along x. The horse stands beside it heading for the latch
 * post, the gate on the side of the hand that works it. It is pushed open, or pulled while the horse backs a step; the
 * horse goes round its free end and turns back on the other side, shuts it and rides clear. Nothing to hold.
 */
export const gate: ObstacleKind = {
  id: 'gate',
  title: 'Gate',
  alsoCalled: ['rope gate', 'door'],
  family: 'work',
  about: 'A gate to open, pass and shut from the saddle without letting go.',
  words: { noun: 'gate', work: (hand, how) => `work {} with a ${hand}-hand ${how}` },
  params: gatePiece.params,
  limits: ['class.slow-entries'],
  build(values) {
    const piece = pieceOfKind('gate', 'gate', values, { x: 0, y: 0, angle: 0 });
    const opening = numberValue(piece.values, 'opening');
    const latch = choiceValue(piece.values, 'latch') === 'end' ? 1 : -1;
    const there = latch === 1 ? 0 : Math.PI;
    const back = latch === 1 ? Math.PI : 0;
    const x = latch * (opening / 2 - HAND_AHEAD);
    const passages = (['push', 'pull'] as const).flatMap((how) =>
      (['left', 'right'] as const).map((hand): Passage => {
        // The gate is at y = 0, so a horse that has it on its left heading +x stands on its −y side.
        const y = (hand === 'left' ? -1 : 1) * latch * BESIDE;
        const beside = { x, y, angle: there };
        // To pull it open the horse backs out of the way of the leaf first.
        const opened =
          how === 'pull' ? [poseStation('gate', { ...beside, x: x - latch * PULLED, y: y * ASIDE }, 'back')] : [];
        return {
          id: `${hand}-${how}`,
          title: `work the gate, ${hand}-hand ${how}`,
          gaits: ['walk'],
          stations: [
            poseStation('gate', beside),
            ...opened,
            poseStation('gate', { x, y: -y, angle: back }, 'work'),
            poseStation('gate', { x: x - latch * CLEAR, y: -y, angle: back }),
          ],
        };
      }),
    );
    return { kind: 'built', pieces: [piece], constraints: [], passages, facts: { opening } };
  },
};
