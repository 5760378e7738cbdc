import type { Point } from '../../../core/plane/point.ts';

/** A fore hoof is round, a hind hoof narrow and pointed at the toe; both about the origin, toe towards +x. */
export function hoofShape(context: CanvasRenderingContext2D, end: 'fore' | 'hind', size: number): void {
  context.beginPath();
  traceHoof(context, end, { at: { x: 0, y: 0 }, angle: 0, radius: size });
}

/** What a path and a context can trace alike. */
type Trace = Pick<Path2D, 'moveTo' | 'lineTo' | 'bezierCurveTo' | 'quadraticCurveTo' | 'closePath'>;

/** Adds the shape of a hoof to a path, somewhere on the screen. */
export function traceHoof(
  path: Trace,
  end: 'fore' | 'hind',
  { at, angle, radius }: { readonly at: Point<'screen'>; readonly angle: number; readonly radius: number },
): void {
  const [c, s] = [Math.cos(angle) * radius, Math.sin(angle) * radius];
  const place = (x: number, y: number): readonly [number, number] => [at.x + c * x - s * y, at.y + s * x + c * y];
  if (end === 'fore') {
    path.moveTo(...place(-0.9, -0.75));
    path.bezierCurveTo(...place(1.6, -1.5), ...place(1.6, 1.5), ...place(-0.9, 0.75));
    path.lineTo(...place(-0.2, 0));
  } else {
    path.moveTo(...place(-0.95, -0.6));
    path.quadraticCurveTo(...place(0.5, -1.05), ...place(1.45, 0));
    path.quadraticCurveTo(...place(0.5, 1.05), ...place(-0.95, 0.6));
    path.lineTo(...place(-0.72, 0));
  }
  path.closePath();
}

/** The same as the data of an SVG path of 12 × 12, toe up: for legends. */
export const HOOF_PATHS = {
  fore: 'M2.4 10C-1.2 -0.6 13.2 -0.6 9.6 10L6 7.4Z',
  hind: 'M3 10.4Q1.2 5.4 6 0.8Q10.8 5.4 9 10.4Z',
} as const;
