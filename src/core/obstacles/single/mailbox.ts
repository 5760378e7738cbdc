import { mailboxPiece } from '../../pieces/mailbox.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { BESIDE, pieceOfKind, poseStation } from '../parts.ts';
import type { Passage } from '../passage.ts';

/**
 * A letter box to halt beside and open. Frame: the mailbox's own; the horse halts along x with it on the hand that works
 * it. Nothing to hold.
 */
export const mailbox: ObstacleKind = {
  id: 'mailbox',
  title: 'Mailbox',
  alsoCalled: ['letter box', 'letterbox', 'post', 'mail'],
  family: 'work',
  about: 'A letter box to ride up to, halt beside, open and shut.',
  words: {
    noun: 'mailbox',
    work: (hand) => `halt with {} on the ${hand}, open it, take out the mail and show it, put it back, and close {}`,
  },
  params: mailboxPiece.params,
  build(values) {
    const piece = pieceOfKind('mailbox', 'mailbox', values, { x: 0, y: 0, angle: 0 });
    const off = BESIDE + numberValue(piece.values, 'width') / 2;
    const passages = ([1, -1] as const).flatMap((way) =>
      (['left', 'right'] as const).map((hand): Passage => {
        const y = way * (hand === 'left' ? -off : off);
        const pose = { x: 0, y, angle: way === 1 ? 0 : Math.PI };
        return {
          id: `${hand}${way === 1 ? '' : '-return'}`,
          title: `halt with the mailbox on the ${hand}${way === 1 ? '' : ' from the other end'}, open it, take out the mail and show it, put it back, and close it`,
          gaits: ['walk'],
          stations: [poseStation('mailbox', pose), poseStation('mailbox', pose, 'work')],
        };
      }),
    );
    return { kind: 'built', pieces: [piece], constraints: [], passages, facts: { beside: off } };
  },
};
