import largeHorse from '../../../assets/horses/large-horse.json' with { type: 'json' };
import mule from '../../../assets/horses/mule.json' with { type: 'json' };
import pony from '../../../assets/horses/pony.json' with { type: 'json' };
import stockHorse from '../../../assets/horses/stock-horse.json' with { type: 'json' };
import type { Horse } from './horse.ts';

// JSON widens a grade to string; tests/core/horses looks at every grade, source and bound.
/** What gaps and turns are judged by until a course names another horse. */
export const STOCK_HORSE = stockHorse as Horse;

export const HORSES: readonly Horse[] = [STOCK_HORSE, pony as Horse, largeHorse as Horse, mule as Horse];

export function horseById(id: string): Horse | undefined {
  return HORSES.find((horse) => horse.id === id);
}
