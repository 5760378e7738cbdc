import type { PointerEvent } from 'react';
import type { PointerSample } from './pointer-controller.ts';

/** A pointer event in the pixels of the element that it happened on. */
export function pointerSample(event: PointerEvent<HTMLDivElement>): PointerSample {
  const box = event.currentTarget.getBoundingClientRect();
  return {
    id: event.pointerId,
    kind: event.pointerType,
    at: { x: event.clientX - box.left, y: event.clientY - box.top },
    button: event.button,
    shift: event.shiftKey,
    alt: event.altKey,
  };
}
