import { useEffect, useState, useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import type { TooBig } from '../../sheets/sheet.ts';
import { type DrawingTold, type DrawnSheet, drawingTold, type SheetQuestion } from './drawn-sheet.ts';

/** A worker that draws. It answers once for each question, in their order. */
export interface DrawingPort {
  ask(question: SheetQuestion): void;
  /** Ends it, whatever it is doing. */
  end(): void;
}

/** What is known of the sheet that is wanted. */
export interface DrawerState {
  readonly wanted: SheetQuestion | null;
  /** The sheet that was drawn last, with the question it answers. It stays while the next one is drawn. */
  readonly shown: { readonly of: SheetQuestion; readonly drawn: DrawnSheet | TooBig } | null;
  /** Why what is wanted could not be drawn. */
  readonly failure: string | null;
}

/** Draws the sheet that was wanted last. */
export interface SheetDrawer {
  state(): DrawerState;
  subscribe(listener: () => void): () => void;
  want(question: SheetQuestion): void;
  /** After a failure. */
  tryAgain(): void;
}

/**
 * A drawing that is under way is finished when the same sheet is wanted anew, and shown until that is drawn: who types sees
 * the page follow. One of another sheet is given up: that may be a set-out of seconds.
 */
export function createSheetDrawer(start: (tell: (told: DrawingTold) => void) => DrawingPort): SheetDrawer {
  const store = createStore<DrawerState>()(() => ({ wanted: null, shown: null, failure: null }));
  let port: DrawingPort | undefined;
  let running: SheetQuestion | undefined;

  function next(): void {
    const { wanted, shown, failure } = store.getState();
    if (wanted === null || running !== undefined || failure !== null || shown?.of === wanted) return;
    running = wanted;
    port ??= start(told);
    port.ask(wanted);
  }
  function told(answer: DrawingTold): void {
    const of = running;
    running = undefined;
    if (of === undefined) return;
    if ('drawn' in answer) store.setState({ shown: { of, drawn: answer.drawn } });
    else {
      // What broke once is not to be trusted with the next question.
      endPort();
      if (store.getState().wanted === of) store.setState({ failure: answer.failure });
    }
    next();
  }
  function endPort(): void {
    port?.end();
    port = undefined;
    running = undefined;
  }
  return {
    state: store.getState,
    subscribe: (listener) => store.subscribe(() => listener()),
    want(question) {
      const { shown } = store.getState();
      if (shown !== null && isSame(shown.of, question) && running === undefined) {
        store.setState({ wanted: shown.of, failure: null });
        return;
      }
      if (running !== undefined && running.sheet !== question.sheet) endPort();
      store.setState({ wanted: question, failure: null });
      next();
    },
    tryAgain() {
      store.setState({ failure: null });
      next();
    },
  };
}

function isSame(a: SheetQuestion, b: SheetQuestion): boolean {
  return a.course === b.course && a.sheet === b.sheet && JSON.stringify(a.options) === JSON.stringify(b.options);
}

function startWorker(tell: (told: DrawingTold) => void): DrawingPort {
  const worker = new Worker(new URL('./drawing-worker.ts', import.meta.url), { type: 'module' });
  let asked: SheetQuestion | undefined;
  let isHere = false;
  const tellHere = (question: SheetQuestion) => setTimeout(() => tell(drawingTold(question)));
  worker.addEventListener('message', ({ data }: MessageEvent<DrawingTold>) => tell(data));
  worker.addEventListener('error', () => {
    // Its script could not be fetched, as without a connection: the page draws itself, and waits for it.
    isHere = true;
    if (asked !== undefined) tellHere(asked);
  });
  return {
    ask(question) {
      asked = question;
      if (isHere) tellHere(question);
      else worker.postMessage(question);
    },
    end: () => worker.terminate(),
  };
}

const drawer = createSheetDrawer(startWorker);

/** What is known of a sheet that is wanted. The question must be the same object while nothing changes. */
export function useDrawnSheet(question: SheetQuestion): DrawerState & { readonly isBusy: boolean; tryAgain(): void } {
  useEffect(() => drawer.want(question), [question]);
  const state = useSyncExternalStore(drawer.subscribe, drawer.state);
  const isBusy = state.failure === null && state.shown?.of !== state.wanted;
  return { ...state, isBusy, tryAgain: drawer.tryAgain };
}

/** Whether a sheet has a drawing to scale, by the last time that it was drawn. */
export function useHasDrawing(sheet: string): boolean {
  const { shown } = useSyncExternalStore(drawer.subscribe, drawer.state);
  const [known, setKnown] = useState({ sheet: '', hasDrawing: false });
  if (shown?.of.sheet === sheet) {
    const hasDrawing = shown.drawn.kind === 'too-big' || shown.drawn.scale !== null;
    if (known.sheet !== sheet || known.hasDrawing !== hasDrawing) setKnown({ sheet, hasDrawing });
    return hasDrawing;
  }
  return known.sheet === sheet && known.hasDrawing;
}
