import type { Draw } from '../course/course.ts';
import { counted } from '../text/sentence.ts';
import type { DrawnOrder } from './draw-order.ts';

const goes = (count: number): string => counted(count, 'go', 'goes');

/** How a list was drawn, so that anybody can draw it again. */
export function drawWords({ seed, between }: Draw): string {
  if (between === 0) return `Drawn with number ${seed}.`;
  return `Drawn with number ${seed}, with ${goes(between)} or more between two of one rider.`;
}

/** What became of a draw: its number, and how far apart riders with several horses are. */
export function drawnWords({ seed, between: wanted }: Draw, { between, most }: DrawnOrder): string {
  const drawn = `Drawn with number ${seed}`;
  if (between === null || most === null) return `${drawn}. Everybody rides once.`;
  const kept = `${drawn}, with ${goes(between)} or more between two of one rider`;
  return between < wanted ? `${kept}: more than ${most} cannot be, and ${wanted} were wanted.` : `${kept}.`;
}
