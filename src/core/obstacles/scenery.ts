import { option } from '../pieces/params.ts';
import type { ObstacleKind } from './obstacle.ts';
import { pieceAt } from './parts.ts';

/** One thing that is not ridden: it dresses the course or shows the way. Frame: the piece's own. No way through it. */
export const scenery: ObstacleKind = {
  id: 'scenery',
  title: 'Scenery',
  group: 'Scenery and own',
  about: 'A plant, barrel, post or marker that dresses the course and is not ridden.',
  params: {
    piece: {
      kind: 'choice',
      label: 'Thing',
      usual: 'plant',
      options: { plant: 'Plant', barrel: 'Barrel', post: 'Post', marker: 'Marker' },
    },
  },
  build(values) {
    const kind = option(values, 'piece');
    return {
      kind: 'built',
      pieces: [pieceAt(kind, kind, {}, { x: 0, y: 0, angle: 0 })],
      constraints: [],
      passages: [],
      facts: {},
    };
  },
};
