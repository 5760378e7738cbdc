/**
 * The focus is never lost: when the element that has it is taken away, moved or switched off, a neighbour takes it. One rule
 * for every list and panel: the same control of the next row, else what stands in the same place, else the heading.
 */
import { useEffect } from 'react';
import { controlsIn, focusPane, type PaneName, takeFocus } from './panes.ts';

/** One ancestor of the focused element: which of its children, and which of its controls, lead to it. */
interface Step {
  readonly place: HTMLElement;
  readonly child: number;
  readonly control: number;
}

interface Trail {
  readonly element: HTMLElement;
  /** From the parent outwards, up to the pane or the dialog. */
  readonly steps: readonly Step[];
  readonly pane: PaneName | undefined;
}

const LISTS = 'ul, ol, tbody, [role="list"]';
const SECTIONS = 'section, aside, dialog, article, [role="tabpanel"]';
const FOCUSABLE = 'button, a, input, select, textarea, summary, label, [tabindex]';
const HEADINGS = 'h2, h3, h4, h5';

function trailOf(element: HTMLElement): Trail {
  const steps: Step[] = [];
  let branch: HTMLElement = element;
  // What stands beside a pane is no neighbour: the same pane of another stage is.
  const first = element.matches('[data-pane]') ? null : element.parentElement;
  for (let place = first; place !== null && place !== document.body; place = place.parentElement) {
    const child = [...place.children].indexOf(branch);
    steps.push({ place, child, control: controlsIn(place).indexOf(element) });
    branch = place;
    if (place.matches('[data-pane], dialog')) break;
  }
  const pane = element.closest<HTMLElement>('[data-pane]')?.dataset.pane as PaneName | undefined;
  return { element, steps, pane };
}

/** The control in the same place, or the last one before it. */
function inPlace(controls: readonly HTMLElement[], index: number): HTMLElement | undefined {
  return controls[Math.min(Math.max(index, 0), controls.length - 1)];
}

/** The same control of the row that is now where the lost one was, else of the row before it. */
function inRow(list: HTMLElement, child: number, control: number): HTMLElement | undefined {
  const { children } = list;
  for (const row of [children[child], children[child - 1]]) {
    const found = row instanceof HTMLElement ? inPlace(controlsIn(row), control) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}

/** A heading takes the focus only so that a person goes on from there; Tab does not reach it. */
function headingOf(section: HTMLElement): HTMLElement | undefined {
  const heading = section.querySelector<HTMLElement>(HEADINGS);
  if (heading === null || !heading.checkVisibility()) return undefined;
  if (!heading.hasAttribute('tabindex')) heading.tabIndex = -1;
  return heading;
}

function neighbour({ steps }: Trail): HTMLElement | undefined {
  for (const [index, { place, child, control }] of steps.entries()) {
    if (!place.isConnected || !place.checkVisibility()) continue;
    const found = place.matches(LISTS)
      ? inRow(place, child, steps[index - 1]?.control ?? 0)
      : ((place.matches(SECTIONS) ? headingOf(place) : undefined) ?? inPlace(controlsIn(place), control));
    if (found !== undefined) return found;
  }
  return undefined;
}

function isAdrift(): boolean {
  const active = document.activeElement;
  return active === null || active === document.body || active.matches(':disabled');
}

/**
 * Gives the focus back to the element where it is only moved, else to its neighbour, its pane, or the arena. Returns the pane
 * that should have it and is still on its way.
 */
function restore(trail: Trail): PaneName | undefined {
  if (!isAdrift()) return undefined;
  const { element, pane } = trail;
  const stays = element.isConnected && !element.matches(':disabled') && element.checkVisibility();
  if (stays && takeFocus(element)) return undefined;
  if (takeFocus(neighbour(trail))) return undefined;
  const wanted = pane ?? 'arena';
  if (focusPane(wanted)) return undefined;
  focusPane('top');
  return wanted;
}

/** Watches over the focus of the whole page. A pointer that presses on nothing may still leave it nowhere. */
export function useFocusKeeper(): void {
  useEffect(() => {
    let trail: Trail | null = null;
    let due = 0;
    /** A pane that is still loading, and what has the focus until it comes. */
    let owed: { readonly pane: PaneName; readonly holder: Element | null } | null = null;
    const focused = ({ target }: FocusEvent) => {
      trail = target instanceof HTMLElement ? trailOf(target) : null;
    };
    const pressed = ({ target }: PointerEvent) => {
      // Whoever presses beside everything means to leave it.
      if (target instanceof Element && target.closest(FOCUSABLE) === null) trail = null;
    };
    const changed = (records: readonly MutationRecord[]) => {
      if (owed !== null && (owed.holder !== document.activeElement || focusPane(owed.pane))) owed = null;
      if (trail === null) return;
      const { element } = trail;
      if (document.activeElement === element && !element.matches(':disabled')) {
        // Rows come and go around the focus; the arena has no rows, and changes most often.
        if (trail.steps.some(({ place }) => place.matches(LISTS))) trail = trailOf(element);
        return;
      }
      const isMoved = records.some(({ removedNodes }) => [...removedNodes].some((node) => node.contains(element)));
      const isLost = isMoved || !element.isConnected || element.matches(':disabled') || !element.checkVisibility();
      if (!isLost || !isAdrift()) return;
      const lost = trail;
      cancelAnimationFrame(due);
      // What was pressed may have focused something itself by then.
      due = requestAnimationFrame(() => {
        const pane = restore(lost);
        owed = pane === undefined ? null : { pane, holder: document.activeElement };
      });
    };
    const watcher = new MutationObserver(changed);
    watcher.observe(document.body, {
      childList: true,
      subtree: true,
      attributes: true,
      attributeFilter: ['disabled', 'hidden', 'open'],
    });
    document.addEventListener('focusin', focused);
    document.addEventListener('pointerdown', pressed);
    return () => {
      watcher.disconnect();
      cancelAnimationFrame(due);
      document.removeEventListener('focusin', focused);
      document.removeEventListener('pointerdown', pressed);
    };
  }, []);
}
