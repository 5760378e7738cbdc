import { useEffect } from 'react';
import type { View } from '../../view.ts';

const PIXELS_A_LINE = 16;

/** The wheel zooms, and pans sideways. React adds wheel listeners as passive; zooming has to stop the page from scrolling. */
export function useWheel(box: { readonly current: HTMLDivElement | null }, view: View): void {
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      const unit = event.deltaMode === 1 ? PIXELS_A_LINE : 1;
      if (event.shiftKey || (event.deltaX !== 0 && !event.ctrlKey)) {
        const sideways = event.shiftKey && event.deltaX === 0;
        view.pan(-unit * (sideways ? event.deltaY : event.deltaX), sideways ? 0 : -unit * event.deltaY);
        return;
      }
      const frame = element.getBoundingClientRect();
      const speed = event.ctrlKey ? 0.01 : 0.0016;
      const factor = Math.exp(-Math.max(-240, Math.min(240, event.deltaY * unit)) * speed);
      view.zoom(factor, { x: event.clientX - frame.left, y: event.clientY - frame.top });
    };
    element.addEventListener('wheel', wheel, { passive: false });
    return () => element.removeEventListener('wheel', wheel);
  }, [box, view]);
}
