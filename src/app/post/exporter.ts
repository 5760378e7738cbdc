import { useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import { postWords } from '../../words/post.ts';
import type { ExportedOrder, ExportOrder, RefusedOrder } from './export-order.ts';
import type { ExportTold } from './export-worker.ts';

/** A worker that writes one order. */
export interface ExportPort {
  /** Ends it, whatever it is doing. */
  end(): void;
}

/** How the last order stands. */
export type ExportState =
  | { readonly kind: 'rest' }
  | { readonly kind: 'busy'; readonly order: ExportOrder; readonly done: number; readonly of: number }
  | { readonly kind: 'done'; readonly order: ExportOrder; readonly result: ExportedOrder | RefusedOrder }
  | { readonly kind: 'failed'; readonly order: ExportOrder; readonly why: string }
  | { readonly kind: 'given-up' };

/** Writes one order at a time. */
export interface Exporter {
  state(): ExportState;
  subscribe(listener: () => void): () => void;
  /** Undefined when one is under way, or when it is given up or fails: the state says why. */
  write(order: ExportOrder): Promise<ExportedOrder | RefusedOrder | undefined>;
  giveUp(): void;
  /** Takes away what is said of the last order. */
  clear(): void;
}

export function createExporter(start: (order: ExportOrder, tell: (told: ExportTold) => void) => ExportPort): Exporter {
  const store = createStore<ExportState>()(() => ({ kind: 'rest' }));
  /** Ends what is under way with the state that follows. */
  let end: ((state: ExportState) => void) | undefined;
  return {
    state: store.getState,
    subscribe: (listener) => store.subscribe(() => listener()),
    write(order) {
      if (end !== undefined) return Promise.resolve(undefined);
      store.setState({ kind: 'busy', order, done: 0, of: order.sheets.length }, true);
      return new Promise((resolve) => {
        const told = (answer: ExportTold) => {
          if ('step' in answer) store.setState({ kind: 'busy', order, ...answer.step }, true);
          else if ('failure' in answer) end?.({ kind: 'failed', order, why: answer.failure });
          else end?.({ kind: 'done', order, result: answer.result });
        };
        let isOver = false;
        const port = start(order, (answer) => {
          if (!isOver) told(answer);
        });
        end = (state) => {
          isOver = true;
          end = undefined;
          port.end();
          store.setState(state, true);
          resolve(state.kind === 'done' ? state.result : undefined);
        };
      });
    },
    giveUp: () => end?.({ kind: 'given-up' }),
    clear() {
      if (end === undefined) store.setState({ kind: 'rest' }, true);
    },
  };
}

function startWorker(order: ExportOrder, tell: (told: ExportTold) => void): ExportPort {
  const worker = new Worker(new URL('./export-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<ExportTold>) => tell(data));
  // A script that could not be fetched has no message.
  worker.addEventListener('error', ({ message }) => tell({ failure: message || postWords.notLoaded }));
  worker.postMessage(order);
  return { end: () => worker.terminate() };
}

/** The page has one, so that an export goes on while another stage is shown. */
export const exporter = createExporter(startWorker);

export function useExportState(): ExportState {
  return useSyncExternalStore(exporter.subscribe, exporter.state);
}
