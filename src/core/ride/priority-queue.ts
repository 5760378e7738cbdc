/** What is waiting, the cheapest first; among equals the one that came first. */
export interface PriorityQueue<T> {
  add(cost: number, item: T): void;
  /** The cheapest, taken out. */
  next(): { readonly cost: number; readonly item: T } | undefined;
}

/** An empty queue: a binary heap in plain arrays, because a search adds many thousands. */
export function priorityQueue<T>(): PriorityQueue<T> {
  const costs: number[] = [];
  const orders: number[] = [];
  const items: T[] = [];
  let size = 0;
  let count = 0;
  const isSooner = (i: number, cost: number, order: number): boolean => {
    const other = costs[i] ?? 0;
    return other < cost || (other === cost && (orders[i] ?? 0) < order);
  };
  const move = (from: number, to: number): void => {
    costs[to] = costs[from] ?? 0;
    orders[to] = orders[from] ?? 0;
    items[to] = items[from] as T;
  };
  const put = (at: number, cost: number, order: number, item: T): void => {
    costs[at] = cost;
    orders[at] = order;
    items[at] = item;
  };
  return {
    add(cost, item) {
      let at = size;
      for (let parent = (at - 1) >> 1; at > 0 && !isSooner(parent, cost, count); parent = (at - 1) >> 1) {
        move(parent, at);
        at = parent;
      }
      put(at, cost, count, item);
      size += 1;
      count += 1;
    },
    next() {
      if (size === 0) return undefined;
      const first = { cost: costs[0] ?? 0, item: items[0] as T };
      size -= 1;
      const [cost, order, item] = [costs[size] ?? 0, orders[size] ?? 0, items[size] as T];
      let at = 0;
      for (let child = 1; child < size; child = 2 * at + 1) {
        const right = child + 1;
        if (right < size && isSooner(right, costs[child] ?? 0, orders[child] ?? 0)) child = right;
        if (!isSooner(child, cost, order)) break;
        move(child, at);
        at = child;
      }
      if (size > 0) put(at, cost, order, item);
      return first;
    },
  };
}
