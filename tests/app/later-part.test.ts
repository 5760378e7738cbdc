import { beforeEach, describe, expect, test, vi } from 'vitest';
import { laterParts } from '../../src/app/later-part.ts';

/** Frames, tasks, rests and timers that the test lets run. */
const waiting: (() => void)[] = [];
async function runOne(): Promise<void> {
  waiting.shift()?.();
  await settled();
}
/** Lets every promise that is ready run its callbacks. */
const settled = () => new Promise((resolve) => setImmediate(resolve));

let later: ReturnType<typeof laterParts>;
beforeEach(() => {
  waiting.length = 0;
  vi.stubGlobal('requestAnimationFrame', (run: () => void) => waiting.push(run));
  vi.stubGlobal('requestIdleCallback', (run: () => void) => waiting.push(run));
  vi.stubGlobal('setTimeout', (run: () => void) => waiting.push(run));
  later = laterParts();
  return () => vi.unstubAllGlobals();
});

/** A part that counts its fetches and fails as often as is asked. */
function counted(failures = 0) {
  const fetches: number[] = [];
  const part = later.laterPart(async () => {
    fetches.push(fetches.length + 1);
    if (fetches.length <= failures) throw new Error('no connection');
    return 'the part';
  });
  return { part, fetches };
}

describe('a part that comes later', () => {
  test('is fetched once, and is there from then on', async () => {
    const { part, fetches } = counted();
    expect(part.now()).toBeUndefined();
    await Promise.all([part.load(), part.load()]);
    expect(part.now()).toBe('the part');
    expect(fetches).toEqual([1]);
  });

  test('tells when it has come', async () => {
    const { part } = counted();
    const seen: unknown[] = [];
    part.subscribe(() => seen.push(part.now()));
    await part.load();
    expect(seen).toEqual(['the part']);
  });

  test('that could not be fetched says so, and is fetched anew', async () => {
    const { part } = counted(1);
    await expect(part.load()).rejects.toThrow('no connection');
    expect(part.hasFailed()).toBe(true);
    await expect(part.load()).resolves.toBe('the part');
    expect(part.hasFailed()).toBe(false);
  });

  test('waits for the first picture, even when it is wanted before', async () => {
    const [wanted, other] = [counted(), counted()];
    later.want(wanted.part);
    later.fetchLaterParts();
    await runOne();
    expect([wanted.fetches, other.fetches]).toEqual([[], []]);
    // The task after the frame.
    await runOne();
    expect([wanted.fetches, other.fetches]).toEqual([[1], []]);
    // The page is at rest.
    await runOne();
    expect([wanted.fetches, other.fetches]).toEqual([[1], [1]]);
  });

  test('is tried again by itself until it comes, and does not hold up the others', async () => {
    const [wanted, other] = [counted(2), counted()];
    later.want(wanted.part);
    later.fetchLaterParts();
    for (let step = 0; step < 6; step += 1) await runOne();
    expect(wanted.fetches).toEqual([1, 2, 3]);
    expect(wanted.part.now()).toBe('the part');
    expect(other.fetches).toEqual([1]);
    expect(waiting).toEqual([]);
  });

  test('is fetched at once when it is wanted after the first picture', async () => {
    later.fetchLaterParts();
    await runOne();
    await runOne();
    const { part, fetches } = counted();
    later.want(part);
    expect(fetches).toEqual([1]);
  });
});
