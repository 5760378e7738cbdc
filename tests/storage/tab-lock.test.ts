import { expect, test } from 'vitest';
import { claimed, type Locks } from '../../src/storage/tab-lock.ts';

/** Locks as the browser gives them, for tabs of one browser. */
function browserLocks(): Locks {
  const taken = new Set<string>();
  return {
    async request(name, _, hold) {
      if (taken.has(name)) return hold(null);
      taken.add(name);
      try {
        return await hold({ name });
      } finally {
        taken.delete(name);
      }
    },
  };
}

test('the first tab holds a course, the second is told, and may have it once the first lets go', async () => {
  const locks = browserLocks();
  const first = await claimed('table', locks);
  expect(first.kind).toBe('held');
  const second = await claimed('table', locks);
  expect(second).toEqual({
    kind: 'elsewhere',
    says: 'This course is open in another tab. Edit it there, or close that tab and reload this one: two tabs would overwrite each other.',
  });
  expect((await claimed('other', locks)).kind).toBe('held');
  if (first.kind === 'held') first.release();
  await Promise.resolve();
  await Promise.resolve();
  expect((await claimed('table', locks)).kind).toBe('held');
});

test('a browser without locks, or one that refuses them, leaves the course unguarded', async () => {
  expect(await claimed('table', undefined)).toEqual({ kind: 'unguarded' });
  const refusing: Locks = { request: () => Promise.reject(new DOMException('no', 'SecurityError')) };
  expect(await claimed('table', refusing)).toEqual({ kind: 'unguarded' });
});
