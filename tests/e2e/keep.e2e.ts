import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { arena, beginCourse, choose, opened, openStarter, placeOf, stage } from './arena.ts';

async function typedName(page: Page, name: string): Promise<void> {
  await choose(page, 'Fan');
  const field = page.getByRole('textbox', { name: 'Name', exact: true });
  await field.fill(name);
  await field.press('Enter');
}

test('nothing is lost when the page is loaded again, not even what was done a moment ago', async ({ page }) => {
  await opened(page);
  await typedName(page, 'Fan by the judge');
  await arena(page).focus();
  await page.keyboard.press('Shift+ArrowLeft');
  const place = await placeOf(page, 'fan-1');
  await page.reload();
  await expect(page.getByRole('region', { name: 'Obstacles' })).toContainText('Fan by the judge');
  expect(await placeOf(page, 'fan-1')).toEqual(place);
});

test('undo and redo are there again when the page is loaded again, even at once', async ({ page }) => {
  await opened(page);
  const named = page.getByRole('region', { name: 'Obstacles' });
  await typedName(page, 'Fan by the judge');
  await typedName(page, 'Fan by the gate');
  await page.getByRole('button', { name: /^Undo: / }).click();
  for (const wait of ['saved', 'at once'] as const) {
    if (wait === 'saved') await expect(page.locator('.save-state')).toHaveText('Saved');
    await page.reload();
    await expect(named).toContainText('Fan by the judge');
    await page.getByRole('button', { name: /^Redo: / }).click();
    await expect(named).toContainText('Fan by the gate');
    await page.getByRole('button', { name: /^Undo: / }).click();
    await page.getByRole('button', { name: /^Undo: / }).click();
    await expect(named).not.toContainText('Fan by');
    await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
    await page.getByRole('button', { name: /^Redo: / }).click();
    await expect(named).toContainText('Fan by the judge');
  }
});

test('a second tab does not overwrite the first', async ({ context, page }) => {
  await opened(page);
  await typedName(page, 'First tab');
  await expect(page.locator('.save-state')).toHaveText('Saved');
  const second = await context.newPage();
  await opened(second);
  await expect(second.getByRole('alert')).toContainText('another tab');
  await second.getByRole('button', { name: 'Work on a copy here' }).click();
  await expect(second.getByRole('alert')).toHaveCount(0);
});

test('a file that is no course is refused with a sentence, and the open course stays', async ({ page }) => {
  // Pickers of the operating system cannot be driven here; without them the page falls back to a plain file field.
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, 'showOpenFilePicker');
    Reflect.deleteProperty(Window.prototype, 'showOpenFilePicker');
  });
  await opened(page);
  const before = await placeOf(page, 'fan-1');
  await page.getByRole('button', { name: 'File', exact: true }).click();
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /^Open a file/ }).click();
  const chooser = await choosing;
  await chooser.setFiles({ name: 'shopping.json', mimeType: 'application/json', buffer: Buffer.from('{"milk": 2}') });
  const dialog = page.getByRole('dialog', { name: 'This file was not opened' });
  await expect(dialog).toContainText('no course');
  await dialog.getByRole('button', { name: 'Close' }).click();
  expect(await placeOf(page, 'fan-1')).toEqual(before);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
});

test('a saved file opens again as the same course', async ({ page }) => {
  await page.addInitScript(() => {
    for (const name of ['showOpenFilePicker', 'showSaveFilePicker']) {
      Reflect.deleteProperty(window, name);
      Reflect.deleteProperty(Window.prototype, name);
    }
  });
  await opened(page);
  await typedName(page, 'Kept in a file');
  await page.getByRole('button', { name: 'File', exact: true }).click();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: /^Save as a file/ }).click();
  const file = await (await saving).path();
  expect(JSON.parse(readFileSync(file, 'utf8')).format).toBe('polewright-course');

  await beginCourse(page, { title: 'Another', unit: 'm' });
  await expect(page.locator('[data-obstacle]')).toHaveCount(0);
  await page.getByRole('button', { name: 'File', exact: true }).click();
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /^Open a file/ }).click();
  await (await choosing).setFiles({ name: 'a.course.json', mimeType: 'application/json', buffer: readFileSync(file) });
  await expect(page.getByRole('region', { name: 'Obstacles' })).toContainText('Kept in a file');
});

test('the pattern is exported as a PDF, named after the course, that bears the title of the class', async ({
  page,
}) => {
  await opened(page);
  await stage(page, 'Post').click();
  await expect(page.locator('img.page').first()).toBeVisible();
  const field = page.getByRole('textbox', { name: 'Class', exact: true });
  await field.fill('Novice trail, morning');
  await field.press('Enter');
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Export PDF' }).click();
  const download = await saving;
  expect(download.suggestedFilename()).toBe('saturday-novice-trail-pattern.pdf');
  const bytes = readFileSync(await download.path());
  expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-');
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const words = (await (await pdf.getPage(1)).getTextContent()).items.map((item) => ('str' in item ? item.str : ''));
  expect(words.join(' ')).toContain('Novice trail, morning');
});

test('a starter that was only looked at leaves nothing behind, one that was changed is kept', async ({ page }) => {
  await opened(page);
  const menu = page.getByRole('button', { name: 'File', exact: true });
  await openStarter(page, 'home-six-poles');
  await expect(page.locator('.course-title')).toContainText('Six poles at home');
  await arena(page).focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('m');
  await expect(page.locator('.save-state')).toHaveText('Saved');
  await beginCourse(page, { title: 'Another course' });
  await expect(page.locator('.course-title')).toContainText('Another course');
  await menu.click();
  const kept = page.locator('.menu [data-kept]');
  await expect(kept).toHaveCount(1);
  await expect(kept).toContainText('Six poles at home');
});

test('where the picture cannot be drawn at all, the course is offered as a file', async ({ page }) => {
  await page.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => {
      throw new Error('this device draws nothing');
    };
  });
  await page.goto('./');
  await expect(page.getByRole('heading', { name: 'Polewright has stopped' })).toBeVisible();
  await expect(page.getByRole('alert')).toContainText('this device draws nothing');
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the course as a file' }).click();
  const file = await (await saving).path();
  expect(JSON.parse(readFileSync(file, 'utf8')).format).toBe('polewright-course');
});

test('an earlier state is gone back to, and undo leads here again', async ({ page }) => {
  // A minute of the page's own clock parts two states; nobody waits for it.
  await page.clock.install();
  await opened(page);
  const named = page.getByRole('region', { name: 'Obstacles' });
  await typedName(page, 'Fan before');
  await page.clock.runFor('00:05');
  await expect(page.locator('.save-state')).toHaveText('Saved');
  await page.clock.runFor('03:00');
  await typedName(page, 'Fan after');
  await page.clock.runFor('00:05');
  await expect(page.locator('.save-state')).toHaveText('Saved');
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Earlier states…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Earlier states of this course' });
  await dialog.getByRole('button', { name: 'Go back to it' }).first().click();
  await expect(dialog).toBeHidden();
  await expect(named).toContainText('Fan before');
  await page.getByRole('button', { name: /^Undo: Go back to/ }).click();
  await expect(named).toContainText('Fan after');
});
