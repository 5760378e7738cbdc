import { type ComponentType, type LazyExoticComponent, lazy } from 'react';

type Load<Part> = () => Promise<Part>;
const waiting: Load<unknown>[] = [];

/** A part of the app that is not in the first load: it comes when it is first shown, or when the page is at rest. */
export function later<Props = object>(load: Load<ComponentType<Props>>): LazyExoticComponent<ComponentType<Props>> {
  waiting.push(load);
  return lazy(async () => ({ default: await load() }));
}

/** Loads what is still to come once the browser has nothing else to do, so that no stage waits for the network. */
export function loadTheRest(): void {
  // Not every browser tells when it is at rest.
  const atRest = globalThis.requestIdleCallback ?? ((run: () => void) => setTimeout(run, 1000));
  atRest(() => {
    for (const load of waiting.splice(0)) load().catch(() => undefined);
  });
}
