import { dimension, sizesOf } from './dimension.ts';

export const gateOpening = dimension({
  id: 'gate-opening',
  says: 'A gate opens wide enough for horse and rider.',
  because: 'A rider who works a narrow gate catches a knee, and the horse learns to rush it.',
  weight: 'must',
  limit: 'gate.opening',
  what: 'the opening of',
  param: 'opening',
  sizes: (obstacle) =>
    sizesOf(obstacle, 'gate', ({ piece, kind, figure }) => {
      const opening = piece.values.opening ?? kind.params.opening?.usual;
      return typeof opening === 'number' ? opening : figure.length;
    }),
});
