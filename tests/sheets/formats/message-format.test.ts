import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { survey } from '../../../src/core/survey.ts';
import { messageFormat } from '../../../src/sheets/formats/message-format.ts';
import { messagePage } from '../../../src/sheets/formats/message-page.ts';
import { textWidth } from '../../../src/sheets/lettering.ts';
import { pattern } from '../../../src/sheets/pattern.ts';
import { SEEDS } from '../samples.ts';
import { LETTER, RESOURCES, UNWATCHED } from './resources.ts';

/** A small phone, in the dots that its pages are measured by. */
const PHONE = 390;

describe('the picture for a message', () => {
  test.each(Object.entries(SEEDS))('can be read on a phone, and nothing leaves it: %s', (_, course) => {
    const page = messagePage(survey(course));
    const dot = PHONE / page.width;
    const words = page.marks.flatMap((mark) => (mark.kind === 'words' ? [mark] : []));
    for (const { text, size } of words) expect(size * dot, text).toBeGreaterThan(11.5);
    for (const { text, size, weight, at, align } of words) {
      const width = textWidth(text, size, weight);
      const left = at.x - (align === 'start' ? 0 : align === 'middle' ? width / 2 : width);
      expect(left, text).toBeGreaterThanOrEqual(0);
      expect(left + width, text).toBeLessThanOrEqual(page.width);
      expect(at.y, text).toBeLessThan(page.height);
    }
    const texts = words.map(({ text }) => text).join(' ');
    expect(texts).toContain('the posted pattern holds.');
    expect(texts).toContain(course.class.title);
    // It has no size of its own, so it states no scale.
    expect(texts).not.toMatch(/1:\d/);
    expect(page.height / page.width).toBeLessThan(2.8);
  });

  test('is 1600 dots wide', async () => {
    const course = SEEDS['larkhollow-open'];
    if (course === undefined) throw new Error('the open starter is missing');
    const sheets = [{ sheet: pattern, options: LETTER }] as const;
    const files = await messageFormat.write({ course, sheets, dpi: 150 }, RESOURCES, UNWATCHED);
    if ('kind' in files || files[0] === undefined) throw new Error('no file');
    expect(files[0].name).toBe('sunday-open-trail-message.png');
    expect(PNG.sync.read(Buffer.from(files[0].bytes)).width).toBe(1600);
  });
});
