/**
 * What is still free on a drawing: a grid of half millimetres on which things that are drawn are blocked, and in
 * which a label looks for the nearest place where it covers nothing.
 */
import type { Bounds } from '../core/plane/ring.ts';
import type { PaperPoint } from './paper-transform.ts';

const CELL = 0.5;
/** On a cell: the box of a label. */
const LABEL = 2;

export interface OccupancyGrid {
  readonly bounds: Bounds;
  readonly columns: number;
  readonly rows: number;
  /** 0 where a cell is free, 1 where something lies on it, 2 where that is a label. */
  readonly cells: Uint8Array;
}

export function emptyGrid(bounds: Bounds): OccupancyGrid {
  const columns = Math.max(1, Math.ceil((bounds.maxX - bounds.minX) / CELL));
  const rows = Math.max(1, Math.ceil((bounds.maxY - bounds.minY) / CELL));
  return { bounds, columns, rows, cells: new Uint8Array(columns * rows) };
}

/** Distance of a place from a straight stroke. */
export function paperSegmentDistance(x: number, y: number, a: PaperPoint, b: PaperPoint): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / square));
  const [across, down] = [a.x + dx * t - x, a.y + dy * t - y];
  // Much quicker than Math.hypot, and nothing here can overflow.
  return Math.sqrt(across * across + down * down);
}

/** Whether a place lies inside a closed outline. */
export function paperRingContains(ring: readonly PaperPoint[], x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const a = ring[i] as PaperPoint;
    const b = ring[j] as PaperPoint;
    if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

/** Visits the cells whose middles lie in the box, with their index and middle. */
function eachCell(grid: OccupancyGrid, box: Bounds, visit: (index: number, x: number, y: number) => void): void {
  const { bounds, columns, rows } = grid;
  const left = Math.max(0, Math.floor((box.minX - bounds.minX) / CELL));
  const right = Math.min(columns - 1, Math.ceil((box.maxX - bounds.minX) / CELL));
  const top = Math.max(0, Math.floor((box.minY - bounds.minY) / CELL));
  const bottom = Math.min(rows - 1, Math.ceil((box.maxY - bounds.minY) / CELL));
  for (let row = top; row <= bottom; row += 1) {
    for (let column = left; column <= right; column += 1) {
      const x = bounds.minX + (column + 0.5) * CELL;
      const y = bounds.minY + (row + 0.5) * CELL;
      if (x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY) visit(row * columns + column, x, y);
    }
  }
}

function paddedBounds(points: readonly PaperPoint[], padding: number): Bounds {
  const xs = points.map((at) => at.x);
  const ys = points.map((at) => at.y);
  return {
    minX: Math.min(...xs) - padding,
    maxX: Math.max(...xs) + padding,
    minY: Math.min(...ys) - padding,
    maxY: Math.max(...ys) + padding,
  };
}

/** Blocks a stroke with `padding` mm on either side of its middle. */
export function blockLine(grid: OccupancyGrid, points: readonly PaperPoint[], padding: number): void {
  points.slice(1).forEach((b, index) => {
    const a = points[index] as PaperPoint;
    eachCell(grid, paddedBounds([a, b], padding), (cell, x, y) => {
      if (paperSegmentDistance(x, y, a, b) <= padding) grid.cells[cell] = 1;
    });
  });
}

/** Blocks an area and `padding` mm around it. */
export function blockRing(grid: OccupancyGrid, ring: readonly PaperPoint[], padding: number): void {
  const [first] = ring;
  if (first === undefined) return;
  eachCell(grid, paddedBounds(ring, 0), (cell, x, y) => {
    if (paperRingContains(ring, x, y)) grid.cells[cell] = 1;
  });
  blockLine(grid, [...ring, first], padding);
}

export function blockBox(grid: OccupancyGrid, box: Bounds): void {
  eachCell(grid, box, (cell) => {
    grid.cells[cell] = 1;
  });
}

/** Blocks the box of a label: no line to another label goes over it. */
export function blockLabel(grid: OccupancyGrid, box: Bounds): void {
  eachCell(grid, box, (cell) => {
    grid.cells[cell] = LABEL;
  });
}

/** Whether a straight goes over a label. */
export function crossesLabel(grid: OccupancyGrid, a: PaperPoint, b: PaperPoint): boolean {
  const { bounds, columns, rows, cells } = grid;
  const steps = Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / (CELL / 2));
  for (let i = 0; i <= steps; i += 1) {
    const t = steps === 0 ? 0 : i / steps;
    const column = Math.floor((a.x + (b.x - a.x) * t - bounds.minX) / CELL);
    const row = Math.floor((a.y + (b.y - a.y) * t - bounds.minY) / CELL);
    const isInside = column >= 0 && column < columns && row >= 0 && row < rows;
    if (isInside && cells[row * columns + column] === LABEL) return true;
  }
  return false;
}

/** How much of the box is taken, in cells; what hangs over the edge of the room counts as taken. */
export function occupiedCells(grid: OccupancyGrid, box: Bounds): number {
  const { bounds } = grid;
  let taken = 0;
  const over =
    Math.max(0, bounds.minX - box.minX) +
    Math.max(0, box.maxX - bounds.maxX) +
    Math.max(0, bounds.minY - box.minY) +
    Math.max(0, box.maxY - bounds.maxY);
  if (over > 0) taken += 10_000 * (1 + over);
  eachCell(grid, box, (cell) => {
    taken += grid.cells[cell] === 0 ? 0 : 1;
  });
  return taken;
}

/** Whether nothing lies in the box, and it keeps inside the room. */
export function isBoxFree({ bounds, columns, cells }: OccupancyGrid, box: Bounds): boolean {
  if (box.minX < bounds.minX || box.maxX > bounds.maxX || box.minY < bounds.minY || box.maxY > bounds.maxY)
    return false;
  const left = Math.ceil((box.minX - bounds.minX) / CELL - 0.5);
  const right = Math.min(columns - 1, Math.floor((box.maxX - bounds.minX) / CELL - 0.5));
  const top = Math.ceil((box.minY - bounds.minY) / CELL - 0.5);
  const bottom = Math.floor((box.maxY - bounds.minY) / CELL - 0.5);
  for (let row = top; row <= bottom; row += 1) {
    for (let column = left; column <= right; column += 1) if (cells[row * columns + column] !== 0) return false;
  }
  return true;
}

export interface LabelSearch {
  readonly width: number;
  readonly height: number;
  /** Where the search starts. */
  readonly around: Bounds;
  /** How far from there it looks, mm. */
  readonly within: number;
  /** The smaller, the better; by the middle of the label. */
  cost(middle: PaperPoint): number;
}

/** Something that is covered is worth this many millimetres of way for each cell. */
const COVERED = 4;

/** The middle of the best place for a label, and whether it is clear of everything. */
export function bestLabelPlace(
  grid: OccupancyGrid,
  search: LabelSearch,
): { readonly at: PaperPoint; readonly clear: boolean } {
  const { around, within, width, height } = search;
  let best = { at: { x: around.minX, y: around.minY }, clear: false };
  let least = Number.POSITIVE_INFINITY;
  for (let y = around.minY - within; y <= around.maxY + within; y += 1) {
    for (let x = around.minX - within; x <= around.maxX + within; x += 1) {
      const cost = search.cost({ x, y });
      if (cost >= least) continue;
      const box = { minX: x - width / 2, maxX: x + width / 2, minY: y - height / 2, maxY: y + height / 2 };
      const taken = occupiedCells(grid, box);
      const whole = cost + taken * COVERED;
      if (whole < least) {
        least = whole;
        best = { at: { x, y }, clear: taken === 0 };
      }
    }
  }
  return best;
}
