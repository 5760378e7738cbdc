import { useEffect, useRef } from 'react';

/** How long a pointer rests on a button before its name shows, milliseconds. */
const REST = 500;
/** Pixels between a button and its name, and between the name and the edge of the window. */
const APART = 6;

/** Shows the name of a button that has none in letters: while a mouse rests on it, or the keyboard's focus is on it. */
export function ButtonName() {
  const plate = useRef<HTMLDivElement>(null);
  useEffect(() => {
    let waiting: number | undefined;
    const hide = () => {
      window.clearTimeout(waiting);
      if (plate.current?.matches(':popover-open')) plate.current.hidePopover();
    };
    const show = (button: HTMLElement) => {
      const element = plate.current;
      if (element === null || !button.isConnected) return;
      element.textContent = button.title || button.ariaLabel || button.textContent;
      element.showPopover();
      place(element, button.getBoundingClientRect());
    };
    const over = (event: PointerEvent) => {
      hide();
      const button = iconButton(event.target);
      // With a title the browser shows the name itself.
      if (event.pointerType === 'touch' || event.buttons !== 0 || button === null || button.title !== '') return;
      waiting = window.setTimeout(() => show(button), REST);
    };
    const focused = (event: FocusEvent) => {
      hide();
      const button = iconButton(event.target);
      if (button?.matches(':focus-visible')) show(button);
    };
    const pressed = (event: KeyboardEvent) => {
      if (event.key === 'Escape') hide();
    };
    const heard = [
      ['pointerover', over],
      ['pointerdown', hide],
      ['focusin', focused],
      ['focusout', hide],
      ['keydown', pressed],
      ['scroll', hide],
    ] as const;
    for (const [name, listener] of heard) document.addEventListener(name, listener as EventListener, true);
    return () => {
      hide();
      for (const [name, listener] of heard) document.removeEventListener(name, listener as EventListener, true);
    };
  }, []);
  // The name is the button's own for a screen reader: here it is for the eye.
  return <div ref={plate} popover="manual" className="button-name" aria-hidden="true" />;
}

/** The button about it that shows no letters; null when there is none. */
function iconButton(target: EventTarget | null): HTMLElement | null {
  const button = target instanceof Element ? target.closest<HTMLElement>('button, summary') : null;
  if (button === null || button.querySelector('svg') === null) return null;
  const hasLetters = [...button.childNodes].some(
    (child) =>
      (child instanceof Text && child.data.trim() !== '') ||
      (child instanceof HTMLElement && child.offsetWidth > 1 && child.textContent.trim() !== ''),
  );
  return hasLetters ? null : button;
}

/** Below the button, above it where there is no room below, and inside the window. */
function place(plate: HTMLElement, button: DOMRect): void {
  const { width, height } = plate.getBoundingClientRect();
  const below = button.bottom + APART;
  const top = below + height + APART > window.innerHeight ? button.top - APART - height : below;
  const middle = button.left + button.width / 2 - width / 2;
  plate.style.top = `${Math.max(APART, top)}px`;
  plate.style.left = `${Math.max(APART, Math.min(middle, window.innerWidth - width - APART))}px`;
}
