import { describe, expect, test } from 'vitest';
import { memoizeByIdentity, memoizeByText, pairCache } from '../../../src/core/memo/by-identity.ts';

/** A function that counts how often it is called. */
function counting<Args extends readonly unknown[]>(answer: (...args: Args) => unknown) {
  const calls = { count: 0 };
  const work = (...args: Args) => {
    calls.count += 1;
    return answer(...args);
  };
  return { calls, work };
}

describe('remembering by identity', () => {
  test('works once for one object, and again for an equal one', () => {
    const { calls, work } = counting((key: { readonly n: number }) => ({ twice: 2 * key.n }));
    const memoized = memoizeByIdentity(work);
    const key = { n: 2 };
    expect(memoized(key)).toBe(memoized(key));
    expect(memoized(key)).toEqual({ twice: 4 });
    expect(calls.count).toBe(1);
    expect(memoized({ n: 2 })).toEqual({ twice: 4 });
    expect(calls.count).toBe(2);
  });

  test('works again when another argument is another one, and answers for that', () => {
    const { calls, work } = counting((key: { readonly n: number }, by: number) => key.n * by);
    const memoized = memoizeByIdentity(work);
    const key = { n: 2 };
    expect([memoized(key, 3), memoized(key, 3), memoized(key, 5), memoized(key, 3)]).toEqual([6, 6, 10, 6]);
    expect(calls.count).toBe(3);
  });

  test('by a text keeps every answer', () => {
    const { calls, work } = counting((owner: { readonly n: number }, text: string) => `${owner.n} ${text}`);
    const memoized = memoizeByText(work);
    const owner = { n: 1 };
    expect([memoized(owner, 'a'), memoized(owner, 'b'), memoized(owner, 'a')]).toEqual(['1 a', '1 b', '1 a']);
    expect(calls.count).toBe(2);
  });

  test('of two objects works again when either or the reason changes', () => {
    const { calls, work } = counting(() => 'answer');
    const cache = pairCache<object, object, unknown>();
    const [a, b] = [{}, {}];
    for (const because of ['x', 'x', 'y']) cache(a, b, { because, work });
    cache(a, {}, { because: 'y', work });
    expect(calls.count).toBe(3);
  });
});
