/** The letters of markers on the drawing, each beside its own marker. */
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import type { Survey } from '../core/survey.ts';
import { letterBeside } from './labels.ts';
import type { OccupancyGrid } from './occupancy-grid.ts';
import { onPaper, type PaperTransform } from './paper-transform.ts';

/** A letter farther than this from the middle of its marker gets a line to it, mm. */
const FAR = 5.5;

/** To be placed before what may stand farther off, such as the numbers: a letter is read with the marker next to it. */
export function letterMarks(survey: Survey, transform: PaperTransform, grid: OccupancyGrid): readonly Mark<'paper'>[] {
  const all = survey.pieces.flatMap(({ key, pose }) => {
    const letter = survey.letters.get(key);
    return letter === undefined ? [] : [{ letter, at: onPaper(transform, pose) }];
  });
  return all.flatMap(({ letter, at }): Mark<'paper'>[] => {
    const others = all.filter((other) => other.letter !== letter).map((other) => other.at);
    const { mark, middle } = letterBeside(grid, letter, at, others);
    const far = distance(middle, at);
    if (far <= FAR) return [mark];
    const toLetter = { x: (middle.x - at.x) / far, y: (middle.y - at.y) / far };
    const from = { x: middle.x - 2 * toLetter.x, y: middle.y - 2 * toLetter.y };
    return [{ kind: 'line', ink: 'words', points: [from, at], width: 0.18 }, mark];
  });
}
