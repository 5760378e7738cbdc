/** How large a page is shown. A zoom of 1 is the size on paper, by the browser's own inch. */

/** `page`: all of the page is seen; `width`: all of its width; a number: so many times the size on paper. */
export type Zoom = 'page' | 'width' | number;

/** A width and a height, of paper in millimetres or of a box on the screen in pixels. */
export interface FrameSize {
  readonly width: number;
  readonly height: number;
}

/** Pixels of a style sheet in a millimetre: 96 in an inch. */
export const PIXELS_A_MM = 96 / 25.4;

/** Room about a page, pixels on each side. */
export const PAGE_MARGIN_PX = 12;

/** What the list offers. */
export const ZOOM_STEPS = [0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4, 6] as const;

const LEAST = 0.1;
const MOST = 8;
/** Two zooms nearer than this are one. */
const SAME = 0.005;

/** A zoom as a number. A box without size, as before it is measured, shows the page at its size on paper. */
export function zoomFactor(zoom: Zoom, page: FrameSize, box: FrameSize): number {
  if (typeof zoom === 'number') return zoom;
  const across = (box.width - 2 * PAGE_MARGIN_PX) / (page.width * PIXELS_A_MM);
  const down = (box.height - 2 * PAGE_MARGIN_PX) / (page.height * PIXELS_A_MM);
  const factor = zoom === 'width' ? across : Math.min(across, down);
  return factor > 0 ? inBounds(factor) : 1;
}

/** The next larger of the usual zooms, or the next smaller. */
export function steppedZoom(factor: number, by: 1 | -1): number {
  const steps: readonly number[] = [LEAST, ...ZOOM_STEPS, MOST];
  const next = by > 0 ? steps.find((step) => step > factor + SAME) : steps.findLast((step) => step < factor - SAME);
  return next ?? (by > 0 ? MOST : LEAST);
}

/** A zoom that fingers or a wheel have changed. */
export function scaledZoom(factor: number, by: number): number {
  return inBounds(factor * by);
}

function inBounds(factor: number): number {
  return Math.max(LEAST, Math.min(MOST, factor));
}

/** What a finger that went so far, pixels, has asked for: the next page, the one before, or none. */
export function swipedBy(dx: number, dy: number): 1 | -1 | 0 {
  if (Math.abs(dx) < 48 || Math.abs(dx) < 1.5 * Math.abs(dy)) return 0;
  return dx < 0 ? 1 : -1;
}
