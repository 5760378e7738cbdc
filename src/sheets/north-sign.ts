import type { Mark } from '../core/plane/mark.ts';
import { blockBox, type OccupancyGrid } from './occupancy-grid.ts';
import type { PaperPoint, PaperTransform } from './paper-transform.ts';
import { arrowhead } from './travel.ts';

/** Half of the sign, mm. */
const HALF = 3.6;
const SIZE = 3.6;

/** An arrow to the north with its letter, at a place; nothing else is set there. */
export function northSign(grid: OccupancyGrid, at: PaperPoint, { turned }: PaperTransform): readonly Mark<'paper'>[] {
  const heading = turned ? Math.PI : -Math.PI / 2;
  const [ux, uy] = [Math.cos(heading), Math.sin(heading)];
  const tip = { x: at.x + 0.9 * HALF * ux, y: at.y + 0.9 * HALF * uy };
  const tail = { x: at.x - HALF * ux, y: at.y - HALF * uy };
  const letter = turned ? { x: at.x, y: at.y - 1.6 } : { x: at.x + 2.6, y: at.y + SIZE / 2 };
  blockBox(grid, { minX: at.x - HALF - 1, maxX: at.x + HALF + 2, minY: at.y - HALF - 2, maxY: at.y + HALF + 1 });
  return [
    { kind: 'line', ink: 'words', points: [tail, tip], width: 0.35 },
    { kind: 'area', ink: 'words', ring: arrowhead(tip, heading, 2) },
    { kind: 'words', at: letter, text: 'N', size: SIZE, weight: 'bold', ink: 'words', align: 'middle' },
  ];
}
