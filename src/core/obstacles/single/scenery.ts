import type { Metres } from '../../measure/quantity.ts';
import { feet } from '../../measure/quantity.ts';
import { choiceValue, numberValue, type Values } from '../../pieces/params.ts';
import { pieceKind } from '../../pieces/pieces.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { pieceOfKind } from '../parts.ts';
import { infeasible, lengthWords } from '../refusal-words.ts';

/** The parameter of each thing that says how wide it is. */
const ACROSS: Readonly<Record<string, string>> = { plant: 'spread', barrel: 'diameter', post: 'foot', marker: 'base' };

/** Sizes that were asked for, by the piece's own parameters; 0 asks for the usual. */
function sizes(kind: string, { across, height }: { across: Metres; height: Metres }): Values {
  return {
    ...(across > 0 ? { [ACROSS[kind] ?? 'across']: across } : {}),
    ...(height > 0 ? { height } : {}),
  };
}

/** One thing that is not ridden: it dresses the course or shows the way. Frame: the piece's own. No way through it. */
export const scenery: ObstacleKind = {
  id: 'scenery',
  title: 'Scenery',
  alsoCalled: ['plants', 'flowers', 'barrel', 'decoration', 'post'],
  family: 'scenery',
  about: 'A plant, barrel, post or marker that dresses the course and is not ridden.',
  params: {
    piece: {
      kind: 'choice',
      label: 'Thing',
      usual: 'plant',
      options: { plant: 'Plant', barrel: 'Barrel', post: 'Post', marker: 'Marker' },
    },
    across: {
      kind: 'length',
      label: 'Across',
      later: true,
      says: 'How wide it is; 0 is as wide as such a thing usually is.',
      usual: 0,
      least: 0,
      most: feet(8),
    },
    height: {
      kind: 'length',
      label: 'Height',
      later: true,
      says: '0 is as high as such a thing usually is.',
      usual: 0,
      least: 0,
      most: feet(10),
    },
  },
  build(values) {
    const kind = choiceValue(values, 'piece');
    const asked = { across: numberValue(values, 'across'), height: numberValue(values, 'height') };
    const given = sizes(kind, asked);
    const params = pieceKind(kind)?.params ?? {};
    const faults = Object.entries(given).flatMap(([key, value]) => {
      const param = params[key];
      if (param === undefined || param.kind === 'choice' || typeof value !== 'number') return [];
      const nearest = Math.min(param.most, Math.max(param.least, value));
      if (nearest === value) return [];
      const bounds = `${lengthWords(param.least)} to ${lengthWords(param.most)}`;
      const why = `${param.label} of a ${kind}: ${lengthWords(value)} is outside ${bounds}.`;
      return [{ key: key === 'height' ? 'height' : 'across', why, nearest }];
    });
    if (faults.length > 0) {
      const nearest = Object.fromEntries(faults.map((each) => [each.key, each.nearest]));
      return infeasible(faults.map(({ why }) => why).join(' '), nearest);
    }
    return {
      kind: 'built',
      pieces: [pieceOfKind(kind, kind, given, { x: 0, y: 0, angle: 0 })],
      constraints: [],
      passages: [],
      facts: {},
    };
  },
};
