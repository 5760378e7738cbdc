/**
 * The list with each item changed. An item that comes back as the same object keeps its place in memory, and when all
 * do, so does the list: what an edit does not touch stays the same object.
 */
export function mapped<T>(list: readonly T[], change: (item: T, index: number) => T): readonly T[] {
  let touched = false;
  const next = list.map((item, index) => {
    const changed = change(item, index);
    if (changed !== item) touched = true;
    return changed;
  });
  return touched ? next : list;
}

/** The items that are kept; the same list when all are. */
export function kept<T>(list: readonly T[], keeps: (item: T) => boolean): readonly T[] {
  const next = list.filter(keeps);
  return next.length === list.length ? list : next;
}
