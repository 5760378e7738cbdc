import { expect, test } from 'vitest';
import { withWholeLengths } from '../../src/sheets/whole-lengths.ts';

test.each([
  [`Tape 6' 4¼" from end A`, `Tape 6'~4¼" from end~A`],
  ['Hold pole 3.', 'Hold pole~3.'],
  ['from pole 2 to pole 10, inside to inside', 'from pole~2 to pole~10, inside to inside'],
  ['Tape 1.95 m from ends B and D.', 'Tape 1.95~m from ends~B and~D.'],
  [`Must stay 5' 9" to 6' 3".`, `Must stay 5'~9" to 6'~3".`],
])('%s keeps together what is one', (text, wanted) => {
  expect(withWholeLengths(text).replaceAll('\u00a0', '~')).toBe(wanted);
});
