import largeHorse from '../../../assets/horses/large-horse.json' with { type: 'json' };
import mule from '../../../assets/horses/mule.json' with { type: 'json' };
import pony from '../../../assets/horses/pony.json' with { type: 'json' };
import stockHorse from '../../../assets/horses/stock-horse.json' with { type: 'json' };
import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Gait, Horse } from './horse.ts';

// JSON widens a grade to string; tests/core/horses looks at every grade, source and bound.
/** What gaps and turns are judged by until a course names another horse. */
export const STOCK_HORSE = stockHorse as Horse;

export const HORSES: readonly Horse[] = [STOCK_HORSE, pony as Horse, largeHorse as Horse, mule as Horse];

/**
 * The horse as it goes on the lead: nobody sits on it, so it turns as tight as any such horse does. A book for led horses
 * prints serpentines of 4 ft at the walk and 7 ft at the jog, which bend the line on 0.76 and 1.36 m.
 */
export const ledHorse = memoizeByIdentity((horse: Horse): Horse => {
  const { walk, jog, lope } = horse.gaits;
  return { ...horse, gaits: { walk: led(walk), jog: led(jog), lope: led(lope) } };
});

function led(gait: Horse['gaits'][Gait]): Horse['gaits'][Gait] {
  const { leastTurn } = gait;
  const source = 'the near end of the range for a ridden horse';
  if ('radius' in leastTurn) {
    const { radius } = leastTurn;
    return { ...gait, leastTurn: { radius: { ...radius, value: radius.least ?? radius.value, source } } };
  }
  const { lean } = leastTurn;
  return { ...gait, leastTurn: { lean: { ...lean, value: lean.most ?? lean.value, source } } };
}

export function horseById(id: string): Horse | undefined {
  return HORSES.find((horse) => horse.id === id);
}
