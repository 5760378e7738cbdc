import { type RefObject, useEffect, useRef } from 'react';
import type { Point } from '../../core/plane/point.ts';
import { swipedBy } from './page-zoom.ts';

/** What fingers, a mouse and a wheel over a page ask for. Places are in the window's pixels. */
export interface PageGestures {
  zoom(by: number, about: Point<'screen'>): void;
  turn(by: 1 | -1): void;
  /** Two clicks or taps: larger there, or all of the page again. */
  toggle(about: Point<'screen'>): void;
}

/** How far a wheel goes at the edge of a page until it turns it, pixels, and how long a rest begins anew, milliseconds. */
const WHEEL_TURN = 100;
const WHEEL_REST = 300;
const PIXELS_A_LINE = 16;

/** Two fingers and the wheel with Ctrl zoom; a mouse drags the page; a finger that cannot drag it any further turns it. */
export function usePageGestures(box: RefObject<HTMLElement | null>, gestures: PageGestures): void {
  const now = useRef(gestures);
  useEffect(() => {
    now.current = gestures;
  });
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const asked: PageGestures = {
      zoom: (by, about) => now.current.zoom(by, about),
      turn: (by) => now.current.turn(by),
      toggle: (about) => now.current.toggle(about),
    };
    const stops = [wheel(element, asked), touch(element, asked), drag(element), double(element, asked)];
    return () => {
      for (const stop of stops) stop();
    };
  }, [box]);
}

type Listeners = { readonly [Kind in keyof HTMLElementEventMap]?: (event: HTMLElementEventMap[Kind]) => void };

/** Listens until it is stopped. Not passive: what zooms must not scroll. */
function listening(element: HTMLElement, listeners: Listeners): () => void {
  const all = Object.entries(listeners) as [string, EventListener][];
  for (const [kind, listener] of all) element.addEventListener(kind, listener, { passive: false });
  return () => {
    for (const [kind, listener] of all) element.removeEventListener(kind, listener);
  };
}

/** Whether a box can still be scrolled towards its end (1) or its start (-1). */
function canScroll(element: HTMLElement, axis: 'x' | 'y', by: 1 | -1): boolean {
  const [at, most] =
    axis === 'x'
      ? [element.scrollLeft, element.scrollWidth - element.clientWidth]
      : [element.scrollTop, element.scrollHeight - element.clientHeight];
  return by > 0 ? at < most - 1 : at > 1;
}

function wheel(element: HTMLElement, { zoom, turn }: PageGestures): () => void {
  let gone = 0;
  let last = Number.NEGATIVE_INFINITY;
  /** One long turn of a wheel without notches turns one page. */
  let hasTurned = false;
  return listening(element, {
    wheel(event) {
      const down = event.deltaY * (event.deltaMode === 1 ? PIXELS_A_LINE : 1);
      if (event.ctrlKey) {
        event.preventDefault();
        zoom(Math.exp(-Math.max(-240, Math.min(240, down)) * 0.004), { x: event.clientX, y: event.clientY });
        return;
      }
      if (event.timeStamp - last > WHEEL_REST) [gone, hasTurned] = [0, false];
      last = event.timeStamp;
      if (down === 0 || hasTurned || canScroll(element, 'y', down > 0 ? 1 : -1)) return;
      gone += down;
      if (Math.abs(gone) < WHEEL_TURN) return;
      hasTurned = true;
      turn(gone > 0 ? 1 : -1);
    },
  });
}

function touch(element: HTMLElement, { zoom, turn }: PageGestures): () => void {
  let pinch: { readonly apart: number; readonly middle: Point<'screen'> } | undefined;
  let swipe: { readonly x: number; readonly y: number; readonly ways: readonly (1 | -1)[] } | undefined;
  return listening(element, {
    touchstart({ touches }) {
      const [first] = touches;
      pinch = pinchOf(touches);
      swipe =
        first === undefined || touches.length > 1
          ? undefined
          : {
              x: first.clientX,
              y: first.clientY,
              ways: ([1, -1] as const).filter((way) => !canScroll(element, 'x', way)),
            };
    },
    touchmove(event) {
      const next = pinchOf(event.touches);
      if (next === undefined || pinch === undefined) return;
      if (event.cancelable) event.preventDefault();
      zoom(next.apart / pinch.apart, next.middle);
      pinch = next;
    },
    touchend({ changedTouches, touches }) {
      const [last] = changedTouches;
      if (swipe !== undefined && last !== undefined) {
        const by = swipedBy(last.clientX - swipe.x, last.clientY - swipe.y);
        if (by !== 0 && swipe.ways.includes(by)) turn(by);
      }
      swipe = undefined;
      pinch = pinchOf(touches);
    },
    touchcancel() {
      swipe = undefined;
      pinch = undefined;
    },
  });
}

function pinchOf(touches: TouchList) {
  const [a, b] = touches;
  if (a === undefined || b === undefined) return undefined;
  const apart = Math.max(1, Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY));
  return { apart, middle: { x: (a.clientX + b.clientX) / 2, y: (a.clientY + b.clientY) / 2 } as Point<'screen'> };
}

function double(element: HTMLElement, { toggle }: PageGestures): () => void {
  return listening(element, { dblclick: ({ clientX: x, clientY: y }) => toggle({ x, y }) });
}

/** Fingers scroll by themselves; a mouse does not. */
function drag(element: HTMLElement): () => void {
  let from: { readonly x: number; readonly y: number; readonly left: number; readonly top: number } | undefined;
  const stop = () => {
    from = undefined;
    element.classList.remove('is-dragged');
  };
  return listening(element, {
    pointerdown(event) {
      if (event.pointerType !== 'mouse' || event.button > 1) return;
      const isOnBar = event.offsetX > element.clientWidth || event.offsetY > element.clientHeight;
      if (event.target === element && isOnBar) return;
      from = { x: event.clientX, y: event.clientY, left: element.scrollLeft, top: element.scrollTop };
      element.setPointerCapture(event.pointerId);
      element.classList.add('is-dragged');
    },
    pointermove(event) {
      if (from === undefined) return;
      element.scrollLeft = from.left + from.x - event.clientX;
      element.scrollTop = from.top + from.y - event.clientY;
    },
    pointerup: stop,
    pointercancel: stop,
  });
}
