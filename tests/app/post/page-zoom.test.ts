import { describe, expect, test } from 'vitest';
import {
  PAGE_MARGIN_PX,
  PIXELS_A_MM,
  scaledZoom,
  steppedZoom,
  swipedBy,
  zoomFactor,
} from '../../../src/app/post/page-zoom.ts';

const LETTER = { width: 215.9, height: 279.4 };
/** As large as a Letter page at its size on paper, with the room about it. */
const WHOLE = { width: 816 + 2 * PAGE_MARGIN_PX, height: 1056 + 2 * PAGE_MARGIN_PX };

describe('the zoom of a page', () => {
  test('a box of the size of the paper shows it at its size', () => {
    expect(LETTER.width * PIXELS_A_MM).toBeCloseTo(816, 6);
    expect(zoomFactor('page', LETTER, WHOLE)).toBeCloseTo(1, 6);
    expect(zoomFactor('width', LETTER, WHOLE)).toBeCloseTo(1, 6);
  });

  test('a low box shows the page smaller, and its width as before', () => {
    const low = { ...WHOLE, height: 528 + 2 * PAGE_MARGIN_PX };
    expect(zoomFactor('page', LETTER, low)).toBeCloseTo(0.5, 6);
    expect(zoomFactor('width', LETTER, low)).toBeCloseTo(1, 6);
  });

  test('a number is that number, and a box without size shows the size on paper', () => {
    expect(zoomFactor(2, LETTER, WHOLE)).toBe(2);
    expect(zoomFactor('page', LETTER, { width: 0, height: 0 })).toBe(1);
  });

  test('steps go to the next usual zoom and end at the last', () => {
    expect([steppedZoom(0.62, 1), steppedZoom(0.62, -1)]).toEqual([0.75, 0.5]);
    expect([steppedZoom(1, 1), steppedZoom(1, -1)]).toEqual([1.5, 0.75]);
    expect([steppedZoom(6, 1), steppedZoom(8, 1), steppedZoom(0.1, -1)]).toEqual([8, 8, 0.1]);
    expect([scaledZoom(4, 3), scaledZoom(0.2, 0.2)]).toEqual([8, 0.1]);
  });
});

test('a finger turns the page when it goes far enough to a side, and not when it goes down', () => {
  expect(swipedBy(-80, 10)).toBe(1);
  expect(swipedBy(80, -10)).toBe(-1);
  expect(swipedBy(-30, 0)).toBe(0);
  expect(swipedBy(-80, 70)).toBe(0);
});
