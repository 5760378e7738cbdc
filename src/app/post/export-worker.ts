/** Writes files away from the page. It works on one order and is ended when that is done, or given up. */

import { type ExportedOrder, type ExportOrder, exportedOrder, type RefusedOrder } from './export-order.ts';
import { BROWSER_RESOURCES } from './export-resources.ts';

/** What a worker's global scope has of use here; the page's types do not know it. */
interface WorkerScope {
  addEventListener(kind: 'message', listener: (event: MessageEvent<ExportOrder>) => void): void;
  postMessage(message: ExportTold): void;
}

export type ExportTold =
  | { readonly step: { readonly done: number; readonly of: number } }
  | { readonly result: ExportedOrder | RefusedOrder }
  | { readonly failure: string };

const scope = globalThis as unknown as WorkerScope;

scope.addEventListener('message', ({ data: order }) => {
  const step = (done: number, of: number) => scope.postMessage({ step: { done, of } });
  exportedOrder(order, BROWSER_RESOURCES, { step }).then(
    (result) => scope.postMessage({ result }),
    (failure: unknown) => scope.postMessage({ failure: failure instanceof Error ? failure.message : String(failure) }),
  );
});
