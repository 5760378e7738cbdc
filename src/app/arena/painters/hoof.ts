/** A fore hoof is round, a hind hoof narrow and pointed at the toe; both about the origin, toe towards +x. */
export function hoofShape(context: CanvasRenderingContext2D, end: 'fore' | 'hind', size: number): void {
  context.beginPath();
  if (end === 'fore') {
    context.moveTo(-size * 0.9, -size * 0.75);
    context.bezierCurveTo(size * 1.6, -size * 1.5, size * 1.6, size * 1.5, -size * 0.9, size * 0.75);
    context.lineTo(-size * 0.2, 0);
  } else {
    context.moveTo(-size * 0.95, -size * 0.6);
    context.quadraticCurveTo(size * 0.5, -size * 1.05, size * 1.45, 0);
    context.quadraticCurveTo(size * 0.5, size * 1.05, -size * 0.95, size * 0.6);
  }
  context.closePath();
}

/** The same as the data of an SVG path of 12 × 12, toe up: for legends. */
export const HOOF_PATHS = {
  fore: 'M2.4 10C-1.2 -0.6 13.2 -0.6 9.6 10L6 7.4Z',
  hind: 'M3 10.4Q1.2 5.4 6 0.8Q10.8 5.4 9 10.4Z',
} as const;
