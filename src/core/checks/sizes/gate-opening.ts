import { pieceSizes, piecesBoundBy, sizeCheck } from '../findings/dimension.ts';

export const gateHeight = sizeCheck({
  id: 'gate-height',
  says: 'A gate is as high as a rider can reach.',
  because: 'A rider who has to lean down to a latch, or up to it, loses the gate.',
  weight: 'must',
  limit: 'gate.height',
  what: 'the height of',
  param: 'height',
  sizes: (obstacle) => pieceSizes(piecesBoundBy(obstacle, 'gate.height'), ({ figure }) => figure.height),
});

export const gateOpening = sizeCheck({
  id: 'gate-opening',
  says: 'A gate opens wide enough for horse and rider.',
  because: 'A rider who works a narrow gate catches a knee, and the horse learns to rush it.',
  weight: 'must',
  limit: 'gate.opening',
  what: 'the opening of',
  param: 'opening',
  sizes: (obstacle) =>
    pieceSizes(piecesBoundBy(obstacle, 'gate.opening'), ({ piece, kind, figure }) => {
      const opening = piece.values.opening ?? kind.params.opening?.usual;
      return typeof opening === 'number' ? opening : figure.length;
    }),
});
