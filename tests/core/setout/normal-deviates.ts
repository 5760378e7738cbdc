import { seededRandom } from '../../../src/core/change/seeded-random.ts';

/** Normally distributed numbers of mean 0 and variance 1 that are the same for the same seed (Box and Muller). */
export function normalDeviates(seed: number): () => number {
  const random = seededRandom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
