/** Marks carried to another place of the paper, and the room that each takes. */
import type { Mark } from '../core/plane/mark.ts';
import type { Bounds } from '../core/plane/ring.ts';
import { backingRadius, CAP_HEIGHT, wordsBounds } from './lettering.ts';
import { strokeWidth } from './line-styles.ts';
import { grown, pointBounds } from './paper-shapes.ts';
import type { PaperPoint, PaperTransform } from './paper-transform.ts';

export function movedMark(mark: Mark<'paper'>, { x, y }: PaperPoint): Mark<'paper'> {
  const move = (at: PaperPoint): PaperPoint => ({ x: at.x + x, y: at.y + y });
  switch (mark.kind) {
    case 'line':
      return { ...mark, points: mark.points.map(move) };
    case 'area':
      return { ...mark, ring: mark.ring.map(move) };
    case 'disc':
    case 'words':
      return { ...mark, at: move(mark.at) };
  }
}

export function movedTransform(transform: PaperTransform, { x, y }: PaperPoint): PaperTransform {
  return { ...transform, x: transform.x + x, y: transform.y + y };
}

export function markBounds(mark: Mark<'paper'>): Bounds {
  switch (mark.kind) {
    case 'line':
      return grown(pointBounds(mark.points), strokeWidth(mark.ink, mark.width) / 2);
    case 'area':
      return pointBounds(mark.ring);
    case 'disc':
      return grown(pointBounds([mark.at]), mark.radius);
    case 'words': {
      if (mark.backing !== 'disc') return wordsBounds(mark);
      const middle = { x: mark.at.x, y: mark.at.y - (CAP_HEIGHT * mark.size) / 2 };
      return grown(pointBounds([middle]), backingRadius(mark));
    }
  }
}
