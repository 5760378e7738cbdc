/** The places where the gait or the lead changes: a tick across the line, with its word. */
import type { Mark } from '../core/plane/mark.ts';
import { linePlaces } from '../core/ride/line-places.ts';
import type { Survey } from '../core/survey.ts';
import { smallWordBeside } from './labels.ts';
import { wordsBounds } from './lettering.ts';
import { blockLine, type OccupancyGrid } from './occupancy-grid.ts';
import { headingOnPaper, onPaper, type PaperPoint, type PaperTransform } from './paper-transform.ts';

/** Half the length of a tick and its stroke, mm. */
const HALF_TICK = 1.7;
const TICK_WIDTH = 0.35;
/** A word farther than this from its tick gets a leader line, mm. */
const FAR = 5;

/** A tick on paper, and the word that belongs to it. */
export interface PlaceTick {
  readonly at: PaperPoint;
  readonly points: readonly [PaperPoint, PaperPoint];
  readonly words: string;
}

export function placeTicks(survey: Survey, transform: PaperTransform): readonly PlaceTick[] {
  return linePlaces(survey.line).map(({ pose, words }): PlaceTick => {
    const at = onPaper(transform, pose);
    const across = headingOnPaper(transform, pose.angle) + Math.PI / 2;
    const [x, y] = [HALF_TICK * Math.cos(across), HALF_TICK * Math.sin(across)];
    return {
      at,
      points: [
        { x: at.x - x, y: at.y - y },
        { x: at.x + x, y: at.y + y },
      ],
      words: words.join(', '),
    };
  });
}

export function tickMarks(ticks: readonly PlaceTick[]): readonly Mark<'paper'>[] {
  return ticks.map(({ points }) => ({ kind: 'line', ink: 'words', points, width: TICK_WIDTH }));
}

export function blockTicks(grid: OccupancyGrid, ticks: readonly PlaceTick[], air: number): void {
  for (const { points } of ticks) blockLine(grid, points, air);
}

/** The words beside their ticks; one that finds room only farther off has a line to its tick. */
export function tickWords(grid: OccupancyGrid, ticks: readonly PlaceTick[]): readonly Mark<'paper'>[] {
  return ticks.flatMap(({ at, words }): Mark<'paper'>[] => {
    const mark = smallWordBeside(grid, words, at);
    const box = wordsBounds(mark);
    const edge = {
      x: Math.min(Math.max(at.x, box.minX), box.maxX),
      y: Math.min(Math.max(at.y, box.minY), box.maxY),
    };
    if (Math.hypot(edge.x - at.x, edge.y - at.y) <= FAR) return [mark];
    return [{ kind: 'line', ink: 'words', points: [edge, at], width: 0.18 }, mark];
  });
}
