/** The parts of the page between which a key jumps: the top, the arena or the page, the panels, the strip. Each is marked with `data-pane`. */
import { useEffect } from 'react';

export type PaneName = 'top' | 'arena' | 'left' | 'right' | 'panel' | 'strip';

const CONTROLS = 'button, a[href], input, select, textarea, summary, [tabindex]';

function isUsable(element: HTMLElement): boolean {
  return element.tabIndex >= 0 && !element.matches(':disabled') && element.checkVisibility();
}

/** What Tab would reach inside an element, in that order. */
export function controlsIn(element: HTMLElement): readonly HTMLElement[] {
  return [...element.querySelectorAll<HTMLElement>(CONTROLS)].filter(isUsable);
}

/**
 * Scrolls the panel that an element stands in, and nothing else, until the element is seen, or stands at the top of it. The
 * browser's own way would scroll the page as well, which has no bar to scroll it back.
 */
export function scrollPanelTo(element: HTMLElement, place: 'nearest' | 'top' = 'nearest'): void {
  let panel = element.parentElement;
  while (panel !== null && !/auto|scroll/.test(getComputedStyle(panel).overflowY)) panel = panel.parentElement;
  if (panel === null) return;
  const [box, own] = [panel.getBoundingClientRect(), element.getBoundingClientRect()];
  const [above, below] = [own.top - box.top, own.bottom - box.bottom];
  if (place === 'top' || above < 0) panel.scrollTop += above;
  else if (below > 0) panel.scrollTop += Math.min(below, above);
}

/** Focuses an element and brings it into view only as far as it must. False when it did not take the focus. */
export function takeFocus(element: HTMLElement | undefined): boolean {
  if (element === undefined) return false;
  element.focus({ preventScroll: true });
  scrollPanelTo(element);
  return document.activeElement === element;
}

function panes(): readonly HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>('[data-pane]')].filter((pane) => pane.checkVisibility());
}

/** Where the focus was in each pane when it left. */
const leftAt = new WeakMap<HTMLElement, HTMLElement>();

function enterPane(pane: HTMLElement): boolean {
  const before = leftAt.get(pane);
  if (before?.isConnected && isUsable(before)) return takeFocus(before);
  const [first] = pane.tabIndex >= 0 ? [pane] : controlsIn(pane);
  return takeFocus(first);
}

/** Focuses a pane where it was left; false when it is not on the page. */
export function focusPane(name: PaneName): boolean {
  return panes().some((pane) => pane.dataset.pane === name && enterPane(pane));
}

/** Focuses the arena, or at Post the page, as soon as it is drawn. */
export function focusArena(): void {
  requestAnimationFrame(() => focusPane('arena'));
}

/** Goes to the next pane, or to the one before, round and round. */
function jump(by: 1 | -1): void {
  const all = panes();
  const here = all.findIndex((pane) => pane.contains(document.activeElement));
  for (let step = 1; step <= all.length; step++) {
    const next = all[(here + by * step + (here < 0 && by < 0 ? 1 : 0) + all.length * 2) % all.length];
    if (next !== undefined && enterPane(next)) return;
  }
}

/** F6 and Shift + F6 jump between the panes, as they do on the desktop; a dialog keeps the focus. */
export function usePaneKeys(): void {
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (event.key !== 'F6' || event.ctrlKey || event.metaKey || event.altKey) return;
      if (document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      jump(event.shiftKey ? -1 : 1);
    };
    const focused = ({ target }: FocusEvent) => {
      if (!(target instanceof HTMLElement)) return;
      const pane = target.closest<HTMLElement>('[data-pane]');
      if (pane !== null) leftAt.set(pane, target);
    };
    window.addEventListener('keydown', pressed);
    document.addEventListener('focusin', focused);
    return () => {
      window.removeEventListener('keydown', pressed);
      document.removeEventListener('focusin', focused);
    };
  }, []);
}
