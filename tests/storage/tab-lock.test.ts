import { expect, test } from 'vitest';
import { acquireLock, type LockRequests } from '../../src/storage/tab-lock.ts';

/** Locks as the browser gives them, for tabs of one browser. */
function browserLocks(): LockRequests {
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
  const first = await acquireLock('table', locks);
  expect(first.kind).toBe('acquired');
  const second = await acquireLock('table', locks);
  expect(second).toEqual({
    kind: 'in-other-tab',
    says: 'This course is open in another tab. Edit it there, or close that tab and reload this one: two tabs would overwrite each other.',
  });
  expect((await acquireLock('other', locks)).kind).toBe('acquired');
  if (first.kind === 'acquired') first.release();
  await Promise.resolve();
  await Promise.resolve();
  expect((await acquireLock('table', locks)).kind).toBe('acquired');
});

test('a browser without locks, or one that refuses them, leaves the course unguarded', async () => {
  expect(await acquireLock('table', undefined)).toEqual({ kind: 'unsupported' });
  const refusing: LockRequests = { request: () => Promise.reject(new DOMException('no', 'SecurityError')) };
  expect(await acquireLock('table', refusing)).toEqual({ kind: 'unsupported' });
});
