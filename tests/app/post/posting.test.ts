import { expect, test } from 'vitest';
import { createPosting, pageOptionsOf } from '../../../src/app/post/posting.ts';

function kept(text: string | null = null) {
  let now = text;
  const keeper = {
    recall: () => now,
    remember: (next: string) => {
      now = next;
    },
  };
  return { keeper, text: () => now };
}

test('paper, orientation and the choices of each sheet are found again; scale and page are not', () => {
  const { keeper } = kept();
  const before = createPosting(keeper);
  before.setPaper('a4');
  before.setOrientation('landscape');
  before.choose('judge', 'words', 'short');
  before.choose('gate', 'times', 'none');
  before.setScale('pattern', 250);
  before.showSheet('judge');
  const after = createPosting(keeper).state();
  expect(pageOptionsOf(after, 'judge')).toEqual({ paper: 'a4', orientation: 'landscape', chosen: { words: 'short' } });
  expect(pageOptionsOf(after, 'pattern')).toEqual({ paper: 'a4', orientation: 'landscape' });
  expect(after.sheet).toBe('pattern');
});

test('a scale is that of one sheet, and may be taken away', () => {
  const posting = createPosting(kept().keeper);
  posting.setScale('pattern', 250);
  expect(pageOptionsOf(posting.state(), 'pattern').scale).toBe(250);
  expect(pageOptionsOf(posting.state(), 'copy')).not.toHaveProperty('scale');
  posting.setScale('pattern', undefined);
  expect(pageOptionsOf(posting.state(), 'pattern')).not.toHaveProperty('scale');
});

test('another sheet is shown from its first page', () => {
  const posting = createPosting(kept().keeper);
  posting.showPage(3);
  posting.showSheet('ring');
  expect(posting.state()).toMatchObject({ sheet: 'ring', page: 0 });
});

test.each([
  ['nothing', null],
  ['no JSON', '{"paper":'],
  ['a list', '[1]'],
  ['other values', '{"paper":"b5","orientation":3,"chosen":{"judge":{"words":4},"gate":"x"}}'],
])('what cannot be read is as at first: %s', (_, text) => {
  const { paper, orientation, chosen } = createPosting(kept(text).keeper).state();
  expect({ paper, orientation }).toEqual({ paper: 'letter', orientation: 'fit' });
  expect(Object.values(chosen).flatMap((own) => Object.values(own))).toEqual([]);
});
