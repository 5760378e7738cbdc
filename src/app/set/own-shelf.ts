import { useEffect, useSyncExternalStore } from 'react';
import type { ShelfItem } from '../../core/course/shelf-item.ts';
import type { Obstacle } from '../../core/obstacles/obstacle.ts';
import type { Shelf } from '../../storage/shelf.ts';

/** What is on the designer's own shelf, as far as it is known, and what stood in the way last. */
interface OwnShelf {
  readonly items: readonly ShelfItem[];
  readonly trouble: string | undefined;
}

let opening: Promise<Shelf> | undefined;
let state: OwnShelf = { items: [], trouble: undefined };
const hearers = new Set<() => void>();

/** The shelf is opened when somebody looks at it for the first time. */
function shelf(): Promise<Shelf> {
  opening ??= import('../../storage/shelf.ts').then((room) => room.openShelf());
  return opening;
}

async function look(trouble?: string): Promise<void> {
  const open = await shelf();
  const found = await open.items();
  const unreadable = found.unreadable[0]?.why;
  state = { items: found.items, trouble: trouble ?? found.error ?? unreadable ?? open.note };
  for (const heard of hearers) heard();
}

/** Puts an obstacle on the shelf under a name; one that has the name already is replaced. */
export async function putOnShelf(title: string, obstacle: Obstacle, now: number): Promise<void> {
  const open = await shelf();
  const same = state.items.find((item) => item.title === title);
  const id = same?.id ?? `own-${now.toString(36)}`;
  await look(await open.save({ id, title, obstacle: { ...obstacle, name: title } }));
}

export async function takeOffShelf(id: string): Promise<void> {
  await look(await (await shelf()).remove(id));
}

export function useShelf(): OwnShelf {
  useEffect(() => void look(), []);
  return useSyncExternalStore(
    (heard) => {
      hearers.add(heard);
      return () => hearers.delete(heard);
    },
    () => state,
  );
}
