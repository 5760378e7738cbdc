import { readFile } from 'node:fs/promises';
import { expect, test } from '@playwright/test';
import { readCourse } from '../../src/core/files/read.ts';
import { EXPORT_FORMATS } from '../../src/sheets/formats/formats.ts';
import { pattern } from '../../src/sheets/pattern.ts';
import { RESOURCES, UNWATCHED } from '../sheets/formats/resources.ts';
import { opened, openStarter, stage } from './arena.ts';

// The PDF has tests of its own. The pattern of this starter has one page: several pages would come as one archive.
test('the browser writes the same bytes as the command line, in every format but the PDF', async ({ page }) => {
  const reading = readCourse(await readFile('seeds/starters/larkhollow-novice.course.json', 'utf8'));
  if (reading.kind === 'refused') throw new Error('the starter is missing');
  await opened(page);
  await openStarter(page, 'larkhollow-novice');
  await stage(page, 'Post').click();
  for (const id of ['svg', 'png', 'message', 'dxf', 'csv']) {
    const format = EXPORT_FORMATS.find((each) => each.id === id);
    if (format === undefined) throw new Error(`there is no format ${id}`);
    await page.getByRole('button', { name: 'More ways to export' }).click();
    const download = page.waitForEvent('download');
    await page.locator('.export-menu').getByRole('button', { name: format.title, exact: false }).first().click();
    const file = await download;
    const options = { paper: 'letter', orientation: 'fit' } as const;
    const job = { course: reading.course, sheets: [{ sheet: pattern, options }], dpi: 150 } as const;
    const [here] = (await format.write(job, RESOURCES, UNWATCHED)) as readonly { name: string; bytes: Uint8Array }[];
    expect(file.suggestedFilename()).toBe(here?.name);
    expect(Buffer.from(here?.bytes ?? []).equals(await readFile(await file.path())), id).toBe(true);
  }
});
