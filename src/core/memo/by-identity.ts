/**
 * memo/ caches results that were worked out from immutable objects, by object identity. A result lives as long as the
 * object it belongs to, so nothing has to be cleared. The cached functions must be pure and must not return undefined.
 */

function isSame(a: readonly unknown[], b: readonly unknown[]): boolean {
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i]) return false;
  return true;
}

/**
 * The function with its last result for each first argument cached. The other arguments are compared by identity: when
 * one differs, the result is worked out again.
 */
export function memoizeByIdentity<Key extends object, Rest extends readonly unknown[], Answer>(
  work: (key: Key, ...rest: Rest) => Answer,
): (key: Key, ...rest: Rest) => Answer {
  const cache = new WeakMap<Key, { readonly rest: Rest; readonly answer: Answer }>();
  return (key, ...rest) => {
    const cached = cache.get(key);
    if (cached !== undefined && isSame(cached.rest, rest)) return cached.answer;
    const answer = work(key, ...rest);
    cache.set(key, { rest, answer });
    return answer;
  };
}

/** The function with every result cached, by an object and a text. */
export function memoizeByText<Owner extends object, Answer>(
  work: (owner: Owner, text: string) => Answer,
): (owner: Owner, text: string) => Answer {
  const cache = new WeakMap<Owner, Map<string, Answer>>();
  return (owner, text) => {
    const answers = cache.get(owner) ?? new Map<string, Answer>();
    cache.set(owner, answers);
    const cached = answers.get(text);
    if (cached !== undefined) return cached;
    const answer = work(owner, text);
    answers.set(text, answer);
    return answer;
  };
}

/** Results about two objects, cached while both exist; `because` names in a text what else they depend on. */
export function pairCache<A extends object, B extends object, Answer>() {
  const cache = new WeakMap<A, WeakMap<B, { readonly because: string; readonly answer: Answer }>>();
  return (a: A, b: B, { because, work }: { readonly because: string; readonly work: () => Answer }): Answer => {
    const first = cache.get(a) ?? new WeakMap();
    cache.set(a, first);
    const cached = first.get(b);
    if (cached?.because === because) return cached.answer;
    const answer = work();
    first.set(b, { because, answer });
    return answer;
  };
}
