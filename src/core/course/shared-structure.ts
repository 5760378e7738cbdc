type Fields = Readonly<Record<string, unknown>>;

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** By its id, so that what was inserted before an item does not part it from itself. */
function sameItem(item: unknown, index: number, list: readonly unknown[]): unknown {
  if (!isFields(item) || typeof item.id !== 'string') return list[index];
  const here = list[index];
  if (isFields(here) && here.id === item.id) return here;
  return list.find((each) => isFields(each) && each.id === item.id);
}

/**
 * The value with every part that equals its counterpart in `like` replaced by that same object; `like` itself when all
 * is equal. Two courses that were read apart then share what an edit would have shared, and caches by identity hold.
 * Plain JSON only; a field that is undefined equals one that is absent. What is new in the result is frozen, as in every
 * edited course.
 */
export function sharedWith<T>(value: T, like: unknown): T {
  // What equals `like` in all its parts is of its type.
  return shared(value, like) as T;
}

function shared(value: unknown, like: unknown): unknown {
  if (value === like || typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) {
    if (!Array.isArray(like)) return value;
    const items = value.map((item, index) => shared(item, sameItem(item, index, like)));
    if (items.length === like.length && items.every((item, index) => item === like[index])) return like;
    return Object.freeze(items);
  }
  if (!isFields(value) || !isFields(like)) return value;
  const counterpart = (field: string) => (Object.hasOwn(like, field) ? like[field] : undefined);
  const fields = definedFields(value).map(([field, item]) => [field, shared(item, counterpart(field))] as const);
  const isEqual =
    fields.length === definedFields(like).length && fields.every(([field, item]) => item === counterpart(field));
  return isEqual ? like : Object.freeze(Object.fromEntries(fields));
}

function definedFields(value: Fields): readonly (readonly [string, unknown])[] {
  return Object.entries(value).filter(([, item]) => item !== undefined);
}
