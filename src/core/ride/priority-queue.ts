/** What is waiting, the cheapest first; among equals the one that came first. */
export interface PriorityQueue<T> {
  add(cost: number, item: T): void;
  next(): { readonly cost: number; readonly item: T } | undefined;
}

interface HeapEntry<T> {
  readonly cost: number;
  readonly order: number;
  readonly item: T;
}

function sooner<T>(a: HeapEntry<T> | undefined, b: HeapEntry<T> | undefined): boolean {
  if (a === undefined || b === undefined) return a !== undefined;
  return a.cost < b.cost || (a.cost === b.cost && a.order < b.order);
}

/** An empty queue: a binary heap. */
export function priorityQueue<T>(): PriorityQueue<T> {
  const heap: HeapEntry<T>[] = [];
  let order = 0;
  const swap = (i: number, k: number): void => {
    const [a, b] = [heap[i], heap[k]];
    if (a === undefined || b === undefined) return;
    heap[i] = b;
    heap[k] = a;
  };
  return {
    add(cost, item) {
      heap.push({ cost, order, item });
      order += 1;
      for (let i = heap.length - 1; i > 0; ) {
        const parent = (i - 1) >> 1;
        if (!sooner(heap[i], heap[parent])) break;
        swap(i, parent);
        i = parent;
      }
    },
    next() {
      const [first] = heap;
      const last = heap.pop();
      if (first === undefined || last === undefined) return undefined;
      if (heap.length > 0) heap[0] = last;
      for (let i = 0; ; ) {
        let least = i;
        for (const child of [2 * i + 1, 2 * i + 2]) if (sooner(heap[child], heap[least])) least = child;
        if (least === i) break;
        swap(i, least);
        i = least;
      }
      return first;
    },
  };
}
