import { STOCK_HORSE } from '../../horses/horses.ts';
import { feet, inches, wholeInches } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { constraintOf, POLE_PARAMS, pieceOfKind } from '../parts.ts';
import { bracketedLength, infeasible, lengthWords } from '../refusal-words.ts';
import { SIDE_PASSING_LIMITS } from '../traits.ts';
import { sidePassages } from './side-pass.ts';

/**
 * Two parallel poles, one before and one behind the horse (or, set close, both between its fore and hind feet). Frame:
 * origin in the middle, poles along x, pole-1 on the −y side.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | gap, side 1 | both at 0.5 | gap |
 * | parallel | | |
 * | ends-level | both at 0.5 | |
 *
 * Usual 6 ft: common practice, no source. Least 24 in: American Mule Association rule 216.
 */
export const sidePassBetween: ObstacleKind = {
  id: 'side-pass-between',
  title: 'Side pass between poles',
  alsoCalled: ['sidepass', 'lateral'],
  family: 'side-passing',
  about: 'Two parallel poles to side pass between, one in front of the horse and one behind.',
  words: { noun: 'poles', sidePassed: 'between {}' },
  params: {
    gap: {
      kind: 'length',
      label: 'Gap',
      says: 'Inside to inside.',
      usual: feet(6),
      least: inches(24),
      most: feet(12),
    },
    ...POLE_PARAMS,
  },
  limits: [...SIDE_PASSING_LIMITS, 'side-pass.parallel'],
  build(values) {
    const gap = numberValue(values, 'gap');
    const size = { length: numberValue(values, 'length'), thickness: numberValue(values, 'thickness') };
    const { wheelbase, hoof } = STOCK_HORSE;
    const inside = wheelbase.value - hoof.value;
    const outside = wheelbase.value + hoof.value;
    if (gap + 2 * size.thickness > inside && gap < outside) {
      const nearest = wholeInches(outside);
      const why = `With ${lengthWords(gap)} between the poles a hoof comes down on one: the feet stand ${lengthWords(wheelbase.value)} apart, front to back. A gap of ${lengthWords(nearest)} leaves them room.`;
      return infeasible(
        `${why} Or lay the poles within ${bracketedLength(inside)}, over all, and ride with both under the horse.`,
        {
          gap: nearest,
        },
      );
    }
    const off = (gap + size.thickness) / 2;
    const pieces = [-1, 1].map((way, i) =>
      pieceOfKind(`pole-${i + 1}`, 'pole', size, { x: 0, y: way * off, angle: 0 }),
    );
    const at = (fraction: number) => pieces.map(({ id }) => ({ piece: id, at: fraction }));
    return {
      kind: 'built',
      pieces,
      constraints: [
        constraintOf('gap-1', 'gap', at(0.5), { hold: gap, side: 1 }),
        constraintOf(
          'parallel-1',
          'parallel',
          pieces.map(({ id }) => ({ piece: id })),
        ),
        constraintOf('level-1', 'ends-level', at(0.5)),
      ],
      passages: sidePassages('pole-1', { length: size.length, y: off, what: 'between the poles' }),
      facts: { gap },
    };
  },
};
