import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { FIRST_COURSE } from '../../../src/app/file/first-course.ts';
import { type ExportOrder, exportedOrder } from '../../../src/app/post/export-order.ts';
import type { ExportResources } from '../../../src/sheets/formats/format.ts';
import { FONTS } from '../../sheets/fonts.ts';

const RESOURCES = { fonts: async () => FONTS } as ExportResources;
const USUAL = { paper: 'letter', orientation: 'fit' } as const;
const QUIET = { step: () => undefined };

function order(...sheets: ExportOrder['sheets']): ExportOrder {
  return { course: FIRST_COURSE, format: 'pdf', sheets, dpi: 150 };
}

async function written(asked: ExportOrder) {
  const result = await exportedOrder(asked, RESOURCES, QUIET);
  if (result.kind === 'refused') throw new Error(result.why);
  return result;
}

describe('an order', () => {
  test('of one sheet is its file, with the pages and the scale that were drawn', async () => {
    const { file, count, pages, scale } = await written(order({ sheet: 'pattern', options: USUAL }));
    expect(file.name).toBe('saturday-novice-trail-pattern.pdf');
    expect(strFromU8(file.bytes.subarray(0, 5), true)).toBe('%PDF-');
    expect({ count, pages }).toEqual({ count: 1, pages: 1 });
    expect(scale).toBeGreaterThan(99);
  });

  test('of several is one pack of files, the same bytes each time', async () => {
    const asked = order({ sheet: 'pattern', options: USUAL }, { sheet: 'copy', options: USUAL });
    const [one, two] = [await written(asked), await written(asked)];
    expect(one.file.name).toBe('saturday-novice-trail-sheets.zip');
    expect(Object.keys(unzipSync(one.file.bytes))).toEqual([
      'saturday-novice-trail-pattern.pdf',
      'saturday-novice-trail-copy.pdf',
    ]);
    expect(one.count).toBe(2);
    expect(one.pages).toBeGreaterThan(2);
    expect(one.scale).toBeNull();
    expect(two.file.bytes).toEqual(one.file.bytes);
    expect(one.notices).toEqual([]);
  });

  test('of sheets that lack a sign tells that once', async () => {
    const course = { ...FIRST_COURSE, class: { ...FIRST_COURSE.class, title: 'Trail 馬' } };
    const asked = order({ sheet: 'pattern', options: USUAL }, { sheet: 'copy', options: USUAL });
    expect((await written({ ...asked, course })).notices).toEqual([expect.stringContaining('馬')]);
  });

  test('that does not fit is refused with the reason', async () => {
    const result = await exportedOrder(order({ sheet: 'pattern', options: { ...USUAL, scale: 20 } }), RESOURCES, QUIET);
    expect(result).toMatchObject({ kind: 'refused', why: expect.stringContaining('At 1:20 the arena is') });
  });

  test('of a format that there is not is a mistake', async () => {
    const wrong = { ...order({ sheet: 'pattern', options: USUAL }), format: 'doc' };
    await expect(exportedOrder(wrong, RESOURCES, QUIET)).rejects.toThrow('there is no format doc');
  });
});
