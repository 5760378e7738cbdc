/** What pointers do at the desk: one drags or draws the tape, a second one makes it a pinch and cancels the drag. */

import { messages } from '../words/desk.ts';
import { pressGesture } from './gestures/press.ts';
import type { PointerInput, Refusal } from './input.ts';
import type { TapeState } from './measuring/tape.ts';
import type { DeskStore } from './model.ts';
import type { Plan } from './plan.ts';

/** The pointers of a desk. */
export interface Pointers {
  input(input: PointerInput): void;
  /** Shows the gesture under way anew from where its pointer is; true when there is one. */
  again(): boolean;
  /** Forgets all pointers that are down. */
  clear(): void;
}

/** Ends a gesture under way and leaves the course as it was before; true when there was one. */
export function cancelGesture(store: DeskStore): boolean {
  if (store.model().gesture === null) return false;
  store.change({ gesture: null, said: messages.cancelled() });
  return true;
}

/** The tape with both ends down: its reading is announced, and suggested as a constraint. */
export function layTape(store: DeskStore, tape: TapeState): void {
  const { survey, instruments } = store.state();
  if (instruments === null) return;
  const read = instruments.tapeReading(survey, tape);
  const unread =
    tape.from === null ? messages.tapeInHand() : messages.tapeHeld(instruments.tapeEndName(survey, tape.from));
  store.change({ tape, tapePress: null, said: read?.says ?? unread, suggestion: read?.suggestion ?? null });
}

/** The pointers of a desk; `apply` takes the step when a gesture is let go of. */
export function createPointers(store: DeskStore, apply: (plan: Plan) => Refusal): Pointers {
  const active = new Set<number>();
  const phases: Readonly<Record<PointerInput['phase'], (input: PointerInput) => void>> = {
    down: (input) => {
      const isAlone = active.size === 0;
      active.add(input.pointerId);
      pointerDown(store, input, isAlone);
    },
    move: (input) => pointerMoved(store, input, { isDown: active.has(input.pointerId), isHover: active.size === 0 }),
    up: (input) => {
      if (active.delete(input.pointerId)) pointerUp(store, input, apply);
    },
    cancel: (input) => {
      if (active.delete(input.pointerId)) pointerLost(store);
    },
  };
  let last: PointerInput | null = null;
  return {
    input(input) {
      last = input;
      phases[input.phase](withDeskSettings(store, input));
    },
    again() {
      const { gesture } = store.model();
      if (gesture === null || last === null) return false;
      store.change({ gesture: gesture.moved(withDeskSettings(store, last)) });
      return true;
    },
    clear: () => active.clear(),
  };
}

/** The input as the switches of the desk have it. */
function withDeskSettings(store: DeskStore, input: PointerInput): PointerInput {
  return { ...input, isSnapOff: input.isSnapOff === store.model().snaps, isAlone: store.state().isAlone };
}

function pointerDown(store: DeskStore, input: PointerInput, isAlone: boolean): void {
  const { tape, tapePress, instruments } = store.model();
  if (tape !== null && instruments !== null) {
    if (isAlone) store.change({ suggestion: null, ...instruments.tapeDown(tape, store.state().survey, input) });
    else store.change({ tape: tapePress?.before ?? tape, tapePress: null });
    return;
  }
  // A second pointer is a pinch: the drag is cancelled, and nothing starts until all pointers are up.
  cancelGesture(store);
  if (isAlone) store.change({ gesture: pressGesture(input, store.state()), suggestion: null, again: null });
}

function pointerMoved(
  store: DeskStore,
  input: PointerInput,
  { isDown, isHover }: { readonly isDown: boolean; readonly isHover: boolean },
): void {
  const { gesture, tape, tapePress, instruments } = store.model();
  // Without a press a mouse that hovers shows where the tape would end.
  if (tape !== null && instruments !== null && (tapePress === null ? isHover : isDown)) {
    const next = instruments.tapeMoved(tape, store.state().survey, input, tapePress);
    if (next !== tape) store.change({ tape: next });
  }
  if (gesture === null || !isDown) return;
  const next = gesture.moved(input);
  if (next !== gesture) store.change({ gesture: next });
}

/** A drag that is done again with just one piece takes the place of the step under this key. */
export function aloneJoin(key: string): string {
  return `drag ${key}`;
}

function pointerUp(store: DeskStore, input: PointerInput, apply: (plan: Plan) => Refusal): void {
  const { gesture, history, tape, tapePress, instruments } = store.model();
  if (tape !== null && tapePress !== null && instruments !== null) {
    const { survey } = store.state();
    layTape(store, instruments.tapeUp(instruments.tapeMoved(tape, survey, input, tapePress), survey));
    return;
  }
  if (gesture === null) return;
  // The result of the commit equals the last preview, but for the open ways.
  const last = gesture.moved(input);
  apply(last.commit());
  const { piece, along } = last;
  if (piece !== undefined && along !== undefined && store.model().history !== history) {
    store.change({ again: piece, join: aloneJoin(piece.key) });
  }
  const snaps = last.guides.flatMap(({ snap }) => (snap === undefined ? [] : [snap]));
  if (store.model().history === history || snaps.length === 0) return;
  const { survey, chosen } = store.state();
  store.change({ suggestion: instruments?.snapSuggestion(survey, chosen, snaps) ?? null });
}

/** A pointer that the system took away: what it began is cancelled. */
function pointerLost(store: DeskStore): void {
  const { tapePress } = store.model();
  if (tapePress !== null) store.change({ tape: tapePress.before, tapePress: null });
  cancelGesture(store);
}
