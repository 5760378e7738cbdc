import { type ComponentType, createElement, lazy, useState } from 'react';

type Load<Part> = () => Promise<Part>;
const pending: Load<unknown>[] = [];

/** A part of the app that is not in the first load: it comes when it is first shown, or when the page is at rest. */
export function lazyComponent<Props extends object = object>(load: Load<ComponentType<Props>>): ComponentType<Props> {
  let part: ComponentType<Props> | undefined;
  const loaded = async () => {
    part = await load();
    return part;
  };
  const Waited = lazy(async () => ({ default: await loaded() }));
  pending.push(loaded);
  // While a part loads React shows nothing in its place; one that is loaded is shown at once.
  // biome-ignore lint/correctness/noComponentHookFactories: called once for each part, at the top of a file.
  return function Later(props: Props) {
    const [Shown] = useState(() => part ?? Waited);
    return createElement(Shown as ComponentType<Props>, props);
  };
}

/** Loads what is still to come once the browser has nothing else to do, so that no stage waits for the network. */
export function prefetchAll(): void {
  // Not every browser reports when it is at rest.
  const atRest = globalThis.requestIdleCallback ?? ((run: () => void) => setTimeout(run, 1000));
  atRest(() => {
    for (const load of pending.splice(0)) load().catch(() => undefined);
  });
}
