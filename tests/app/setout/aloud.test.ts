import { expect, test } from 'vitest';
import { spokenText } from '../../../src/app/setout/aloud.ts';

test.each([
  [`Tape 3' 0" from pole 1`, 'Tape 3 feet from pole 1'],
  [`Tape 36' 8½" along`, 'Tape 36 feet 8 and a half inches along'],
  [`1' ¼"`, '1 foot a quarter inches'],
  [`within ½".`, 'within a half inches.'],
  [`within 1".`, 'within 1 inch.'],
  [`Lay pole 2 (12', ends C and D).`, 'Lay pole 2 (12 feet, ends C and D).'],
  [`Tape 2.635 m from`, 'Tape 2.635 metres from'],
  ['Set pole 2 square to pole 1 by 3-4-5', 'Set pole 2 square to pole 1 by 3 4 5'],
  ['Bring ends A and C level with each other.', 'Bring ends A and C level with each other.'],
])('%s is read aloud as words', (text, spoken) => {
  expect(spokenText(text)).toBe(spoken);
});
