/** Marks carried to another place of the paper. */
import type { Mark } from '../core/plane/mark.ts';
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
