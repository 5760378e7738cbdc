import { useEffect, useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import type { ShelfItem } from '../../core/course/shelf-item.ts';
import type { Obstacle } from '../../core/obstacles/obstacle.ts';
import type { Shelf } from '../../storage/shelf.ts';

/** The designer's own shelf, as far as it is loaded, and the last error. */
interface OwnShelf {
  readonly items: readonly ShelfItem[];
  readonly errorMessage: string | undefined;
}

let opening: Promise<Shelf> | undefined;
const store = createStore<OwnShelf>()(() => ({ items: [], errorMessage: undefined }));

/** The shelf is opened when somebody looks at it for the first time. */
function shelf(): Promise<Shelf> {
  opening ??= import('../../storage/shelf.ts').then((module) => module.openShelf());
  return opening;
}

async function reload(failure?: string): Promise<void> {
  const open = await shelf();
  const found = await open.items();
  const unreadable = found.unreadable[0]?.why;
  store.setState({ items: found.items, errorMessage: failure ?? found.error ?? unreadable ?? open.note });
}

/** Puts an obstacle on the shelf under a name; one that has the name already is replaced. */
export async function putOnShelf(title: string, obstacle: Obstacle, now: number): Promise<void> {
  const open = await shelf();
  const same = store.getState().items.find((item) => item.title === title);
  const id = same?.id ?? `own-${now.toString(36)}`;
  await reload(await open.save({ id, title, obstacle: { ...obstacle, name: title } }));
}

export async function takeOffShelf(id: string): Promise<void> {
  await reload(await (await shelf()).remove(id));
}

export function useShelf(): OwnShelf {
  useEffect(() => void reload(), []);
  return useSyncExternalStore(store.subscribe, store.getState);
}
