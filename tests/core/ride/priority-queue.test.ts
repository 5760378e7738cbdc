import fc from 'fast-check';
import { expect, test } from 'vitest';
import { priorityQueue } from '../../../src/core/ride/priority-queue.ts';

test('what was added comes out cheapest first, equals as they came', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 9 })), (costs) => {
      const waiting = priorityQueue<number>();
      for (const [i, cost] of costs.entries()) waiting.add(cost, i);
      const out = costs.map(() => waiting.next()?.item);
      const sorted = [...costs.keys()].sort((a, b) => (costs[a] ?? 0) - (costs[b] ?? 0) || a - b);
      expect(out).toEqual(sorted);
      expect(waiting.next()).toBeUndefined();
    }),
  );
});
