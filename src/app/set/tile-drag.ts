import { type PointerEvent, useEffect, useRef, useState } from 'react';
import type { Point } from '../../core/plane/point.ts';

/** A mouse that has gone further than this drags; before that it may still be a click. Pixels. */
const DRAG_FROM = 6;
/** A finger that stays this long on a tile picks it up, milliseconds; one that moves before scrolls the list. */
const HOLD_MS = 250;
/** How far a finger may tremble while it holds, pixels. */
const HOLD_WITHIN = 10;

/** How a tile of the list of what to add takes a pointer. */
export interface TilePointer {
  onPointerDown(event: PointerEvent<HTMLButtonElement>): void;
  onPointerMove(event: PointerEvent<HTMLButtonElement>): void;
  onPointerUp(event: PointerEvent<HTMLButtonElement>): void;
  onPointerCancel(): void;
  onClick(): void;
}

/** What is in the hand, and where on the page. */
export interface Carried<Goods> extends Point<'screen'> {
  readonly goods: Goods;
}

interface TileDragOptions<Goods> {
  /** A click, a tap, or Enter. */
  taken(goods: Goods): void;
  /** Let go of at a place on the page. */
  dropped(goods: Goods, at: Point<'screen'>): void;
  /** It was given up: Escape, a second finger, or the browser took the pointer. */
  putBack(): void;
}

interface Press<Goods> extends Carried<Goods> {
  readonly pointer: number;
  readonly isTouch: boolean;
}

/**
 * Tiles that are clicked or dragged. The pointer is captured when it goes down: the next event of a quick hand may be
 * far outside of the tile. A finger has to hold first, so that it can still scroll the list.
 */
export function useTileDrag<Goods>(options: TileDragOptions<Goods>): {
  readonly carried: Carried<Goods> | null;
  tile(goods: Goods): TilePointer;
} {
  const [carried, setCarried] = useState<Carried<Goods> | null>(null);
  const press = useRef<Press<Goods> | null>(null);
  const isCarrying = useRef(false);
  const hold = useRef<ReturnType<typeof setTimeout>>(undefined);
  /** A pointer that dragged also clicks when it is let go of, since its tile has captured it. */
  const swallowsClick = useRef(false);
  const latest = useRef(options);
  useEffect(() => {
    latest.current = options;
  });

  const stop = () => {
    clearTimeout(hold.current);
    press.current = null;
    isCarrying.current = false;
    setCarried(null);
  };
  const putBack = () => {
    const wasCarrying = isCarrying.current;
    if (wasCarrying) swallowsClick.current = true;
    stop();
    if (wasCarrying) latest.current.putBack();
  };
  const carry = (goods: Goods, at: Point<'screen'>) => {
    isCarrying.current = true;
    swallowsClick.current = true;
    setCarried({ goods, x: at.x, y: at.y });
  };

  const putBackNow = useRef(putBack);
  useEffect(() => {
    putBackNow.current = putBack;
  });
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !isCarrying.current) return;
      event.preventDefault();
      event.stopPropagation();
      putBackNow.current();
    };
    const secondPointer = (event: globalThis.PointerEvent) => {
      if (press.current !== null && event.pointerId !== press.current.pointer) putBackNow.current();
    };
    // The browser would scroll the list under a finger that carries a tile.
    const touchMove = (event: TouchEvent) => {
      if (isCarrying.current && event.cancelable) event.preventDefault();
    };
    const menu = (event: Event) => {
      if (press.current?.isTouch === true) event.preventDefault();
    };
    window.addEventListener('keydown', key, true);
    window.addEventListener('pointerdown', secondPointer, true);
    window.addEventListener('touchmove', touchMove, { passive: false });
    window.addEventListener('contextmenu', menu, true);
    return () => {
      window.removeEventListener('keydown', key, true);
      window.removeEventListener('pointerdown', secondPointer, true);
      window.removeEventListener('touchmove', touchMove);
      window.removeEventListener('contextmenu', menu, true);
      clearTimeout(hold.current);
    };
  }, []);

  const isFar = (event: PointerEvent, far: number): boolean => {
    const began = press.current;
    return began !== null && Math.hypot(event.clientX - began.x, event.clientY - began.y) >= far;
  };
  const isOurs = (event: PointerEvent): boolean => press.current?.pointer === event.pointerId;

  const tile = (goods: Goods): TilePointer => ({
    onPointerDown(event) {
      if (event.button !== 0 || press.current !== null) return;
      const at = { x: event.clientX, y: event.clientY };
      const isTouch = event.pointerType === 'touch';
      swallowsClick.current = false;
      press.current = { ...at, goods, pointer: event.pointerId, isTouch };
      event.currentTarget.setPointerCapture(event.pointerId);
      if (isTouch) hold.current = setTimeout(() => carry(goods, at), HOLD_MS);
    },
    onPointerMove(event) {
      const began = press.current;
      if (began === null || !isOurs(event)) return;
      const at = { x: event.clientX, y: event.clientY };
      if (isCarrying.current) setCarried({ goods: began.goods, ...at });
      else if (!began.isTouch && isFar(event, DRAG_FROM)) carry(began.goods, at);
      else if (began.isTouch && isFar(event, HOLD_WITHIN)) {
        clearTimeout(hold.current);
        // The list scrolls up and down only: sideways can be nothing but a drag.
        if (Math.abs(at.x - began.x) > Math.abs(at.y - began.y)) carry(began.goods, at);
      }
    },
    onPointerUp(event) {
      const began = press.current;
      if (began === null || !isOurs(event)) return;
      // A quick hand may let go far away without a move in between.
      const isDrop = isCarrying.current || (!began.isTouch && isFar(event, DRAG_FROM));
      if (began.isTouch && isFar(event, HOLD_WITHIN)) swallowsClick.current = true;
      stop();
      if (!isDrop) return;
      swallowsClick.current = true;
      latest.current.dropped(began.goods, { x: event.clientX, y: event.clientY });
    },
    onPointerCancel: putBack,
    onClick() {
      const isSwallowed = swallowsClick.current;
      swallowsClick.current = false;
      if (!isSwallowed) latest.current.taken(goods);
    },
  });
  return { carried, tile };
}
