import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balancedHeight, type Column, flowedText, type TextItem } from '../../src/sheets/flow.ts';
import { textWidth } from '../../src/sheets/lettering.ts';

function columns(count: number, height: number, width = 60): readonly Column[] {
  return Array.from({ length: count }, (_, index) => ({ page: index, x: 10 + index * 70, y: 20, width, height }));
}

const step = fc
  .array(fc.constantFrom('jog', 'over', 'the', 'poles', 'quietly', 'and', 'straight', 'a'), {
    minLength: 1,
    maxLength: 30,
  })
  .map((words): TextItem => ({ kind: 'paragraph', text: words.join(' '), hang: '8.' }));

describe('words in columns', () => {
  test('every word is set once, in order, inside its column', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), fc.integer({ min: 30, max: 90 }), (items, height) => {
        const places = columns(20, height);
        const { marks, whole } = flowedText(items, places, 4);
        expect(whole).toBe(true);
        const words = marks.flatMap(({ mark }) => (mark.kind === 'words' && mark.text !== '8.' ? [mark.text] : []));
        expect(words.join(' ')).toBe(items.map(({ text }) => text).join(' '));
        for (const { page, mark } of marks) {
          const column = places[page];
          if (mark.kind !== 'words' || column === undefined) throw new Error('words in a column');
          expect(mark.at.x).toBeGreaterThanOrEqual(column.x);
          expect(mark.at.x + textWidth(mark.text, 4, mark.weight)).toBeLessThanOrEqual(column.x + column.width + 1e-9);
          expect(mark.at.y).toBeGreaterThan(column.y);
          expect(mark.at.y).toBeLessThanOrEqual(column.y + column.height);
        }
      }),
    );
  });

  test('what does not fit is said not to fit', () => {
    const items: TextItem[] = Array.from({ length: 9 }, (_, index) => ({
      kind: 'paragraph',
      text: 'Walk.',
      hang: `${index}.`,
    }));
    expect(flowedText(items, columns(1, 20), 4).whole).toBe(false);
    expect(flowedText(items, columns(3, 20), 4).whole).toBe(true);
  });

  test('a heading never stands alone at the foot of a column', () => {
    const items: TextItem[] = [
      { kind: 'paragraph', text: 'Walk.' },
      { kind: 'heading', text: 'Please note' },
      { kind: 'paragraph', text: 'Ask before you ride.' },
    ];
    for (let height = 14; height < 40; height += 0.5) {
      const { marks } = flowedText(items, columns(3, height), 4);
      const pageOf = (text: string) => marks.find(({ mark }) => mark.kind === 'words' && mark.text === text)?.page;
      if (pageOf('Ask before you ride.') !== undefined) {
        expect(pageOf('Please note')).toBe(pageOf('Ask before you ride.'));
      }
    }
  });

  test('balanced columns are the lower, the more there are, and hold everything', () => {
    const items: TextItem[] = Array.from({ length: 8 }, () => ({
      kind: 'paragraph',
      text: 'Jog to and over the poles.',
      hang: '1.',
    }));
    const heights = [1, 2, 3].map((count) => balancedHeight(items, { count, width: 60 }, 4));
    expect(heights).toEqual(heights.toSorted((a, b) => b - a));
    heights.forEach((height, index) => {
      expect(flowedText(items, columns(index + 1, height + 0.001), 4).whole).toBe(true);
    });
  });
});
