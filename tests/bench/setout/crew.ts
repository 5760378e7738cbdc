/**
 * A crew that sets a course out from the plan's file and nothing else, with errors of its own. Its formulas are written anew
 * here, so that a mistake in the program's own does not agree with itself.
 */
import type { SetOutDocument } from '../../../src/core/setout/setout-document.ts';

type Step = SetOutDocument['parts'][number]['steps'][number];
type Told = Step['observations'][number];
type Size = SetOutDocument['pieces'][number];

export interface Lying {
  x: number;
  y: number;
  heading: number;
}

/** Uniform numbers from 0 to 1, the same for the same seed (a 32-bit linear congruential generator, Numerical Recipes' constants). */
export function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
}

/** A normal deviate by Box and Muller's formula. */
export function normal(roll: () => number): number {
  return Math.sqrt(-2 * Math.log(roll())) * Math.cos(2 * Math.PI * roll());
}

/** Metres; a tape shows a thousand times less. */
const NEAR_ENOUGH = 1e-7;

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly ux: number;
  readonly uy: number;
  readonly half: number;
}

export class Site {
  readonly lying = new Map<string, Lying>();
  private readonly sizes: ReadonlyMap<string, Size>;

  private readonly plan: SetOutDocument;

  constructor(plan: SetOutDocument) {
    this.plan = plan;
    this.sizes = new Map(plan.pieces.map((each) => [each.key, each]));
  }

  private spot(key: string, at: number, lies: Lying): Spot & Size {
    const size = this.sizes.get(key);
    if (size === undefined) throw new Error(`the plan has no piece ${key}`);
    const [ux, uy] = [Math.cos(lies.heading), Math.sin(lies.heading)];
    const off = (at - 0.5) * size.length;
    return { ...size, x: lies.x + off * ux, y: lies.y + off * uy, ux, uy, half: size.width / 2 };
  }

  /** The value of an observation when one piece lies as given. */
  private value(of: Told, key: string, lies: Lying): number {
    const [first, second] = of.grips;
    const at = (grip: { piece: string; at: number }): Spot & Size =>
      this.spot(grip.piece, grip.at, grip.piece === key ? lies : (this.lying.get(grip.piece) as Lying));
    const a = at(first);
    if ('wall' in second) return this.fromWall(of.kind, a, second);
    const b = at(second);
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const far = Math.hypot(dx, dy);
    switch (of.kind) {
      case 'gap': {
        const cosine = (s: Spot) => Math.abs(s.ux * dy - s.uy * dx) / far;
        return far - a.half / cosine(a) - b.half / cosine(b);
      }
      case 'between':
        return far - (a.small ? a.half : 0) - (b.small ? b.half : 0);
      case 'beside':
        return Math.abs(b.ux * dy - b.uy * dx) - a.half - b.half;
      case 'against':
        return of.side * (b.uy * dx - b.ux * dy) - b.half;
      case 'clear': {
        const end = this.spot(
          b.key,
          second.at <= 0.5 ? 0 : 1,
          second.piece === key ? lies : (this.lying.get(second.piece) as Lying),
        );
        return Math.abs((end.x - a.x) * end.ux + (end.y - a.y) * end.uy) - a.half;
      }
      case 'ahead':
        return a.ux * dx + a.uy * dy;
      case 'in-line':
        return a.ux * dy - a.uy * dx;
      case 'level':
        return this.level(a, b, first.at, second.at);
      case 'square': {
        const turn = Math.atan2(a.ux * b.uy - a.uy * b.ux, a.ux * b.ux + a.uy * b.uy);
        const rest = (turn - Math.PI / 2) / Math.PI;
        return (rest - Math.round(rest)) * Math.PI;
      }
      default:
        throw new Error(`this crew cannot observe ${of.kind}`);
    }
  }

  private level(a: Spot, b: Spot, atA: number, atB: number): number {
    const turn = a.ux * b.ux + a.uy * b.uy;
    const across = Math.abs(a.ux * b.uy - a.uy * b.ux);
    const ends = (atA - 0.5) * (atB - 0.5);
    const isOpposite = ends === 0 || across < Math.sin(Math.PI / 90) ? turn < 0 : ends < 0;
    const sign = isOpposite ? -1 : 1;
    return ((b.x - a.x) * (a.ux + sign * b.ux) + (b.y - a.y) * (a.uy + sign * b.uy)) / 2;
  }

  private fromWall(
    kind: string,
    a: Spot & Size,
    {
      wall,
      from = 0,
      runs = 1,
    }: { wall: 'south' | 'east' | 'north' | 'west'; from?: number | undefined; runs?: 1 | -1 | undefined },
  ): number {
    const { length, width } = this.plan.arena;
    const along = { south: a.x, east: a.y, north: length - a.x, west: width - a.y }[wall];
    const off = { south: a.y, east: length - a.x, north: width - a.y, west: a.x }[wall];
    const lengthwise = wall === 'south' || wall === 'north' ? Math.abs(a.ux) : Math.abs(a.uy);
    if (kind === 'off-wall') return off - a.half * lengthwise;
    if (kind === 'along-wall') return runs * (along - from);
    if (kind === 'from-rail') return Math.hypot(along - from, off) - (a.small ? a.half : 0);
    throw new Error(`this crew cannot observe ${kind} at a wall`);
  }

  /**
   * Lays one piece so that its observations come to `wanted`: Newton's method with slopes by differences, from the sketch,
   * and from where it lay in the build before.
   */
  lay(step: Step, wanted: readonly number[], heading: number | undefined): void {
    const before = this.lying.get(step.lay) ?? step.sketch;
    const lies: Lying = { ...before, ...(heading === undefined ? {} : { heading }) };
    const free = heading === undefined ? (['x', 'y', 'heading'] as const) : (['x', 'y'] as const);
    for (let round = 0; round < 60; round += 1) {
      const off = step.observations.map((of, i) => this.value(of, step.lay, lies) - (wanted[i] as number));
      if (Math.max(...off.map(Math.abs)) < NEAR_ENOUGH) break;
      const slopes = step.observations.map((of) =>
        free.map((name) => {
          const [more, less] = [{ ...lies }, { ...lies }];
          more[name] += 1e-6;
          less[name] -= 1e-6;
          return (this.value(of, step.lay, more) - this.value(of, step.lay, less)) / 2e-6;
        }),
      );
      const move = gauss(slopes, off);
      // A piece is pushed a little at a time: from a rough sketch a whole step can go too far.
      const most = Math.max(...move.map((each, i) => Math.abs(each) * (free[i] === 'heading' ? 2 : 1)));
      const share = most > 0.4 ? 0.4 / most : 1;
      free.forEach((name, i) => {
        lies[name] -= share * (move[i] as number);
      });
    }
    this.lying.set(step.lay, lies);
  }

  /** Sets everything out once. */
  build(roll: (() => number) | undefined): void {
    for (const { steps } of this.plan.parts) {
      for (const step of steps) {
        const error = (sigma: number): number => (roll === undefined ? 0 : sigma * normal(roll));
        const wanted = step.observations.map(({ reading, sigma }) => reading + error(sigma));
        const { byEye } = step;
        this.lay(step, wanted, byEye === undefined ? undefined : byEye.heading + error(byEye.sigma));
      }
    }
  }

  /** A gap between two pieces as it lies, taped as the plan says. */
  gap({ pieces, at }: SetOutDocument['gaps'][number]): number {
    const [first, second] = pieces;
    return this.value(
      {
        kind: 'gap',
        grips: [
          { piece: first, at: at[0], along: 0 },
          { piece: second, at: at[1], along: 0 },
        ],
        side: 1,
        reading: 0,
        sigma: 0,
      },
      first,
      this.lying.get(first) as Lying,
    );
  }
}

/** Solves a small system by elimination with pivots. */
function gauss(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const rows = matrix.map((row, i) => [...row, right[i] as number]);
  const size = rows.length;
  for (let column = 0; column < size; column += 1) {
    const pivot = rows
      .slice(column)
      .reduce((best, row) => (Math.abs(row[column] as number) > Math.abs(best[column] as number) ? row : best));
    rows.splice(rows.indexOf(pivot), 1);
    rows.splice(column, 0, pivot);
    for (const row of rows) {
      if (row === pivot) continue;
      const share = (row[column] as number) / (pivot[column] as number);
      for (let i = column; i <= size; i += 1) row[i] = (row[i] as number) - share * (pivot[i] as number);
    }
  }
  return rows.map((row, i) => (row[size] as number) / (row[i] as number));
}
