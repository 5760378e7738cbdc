import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { opened, stage } from './arena.ts';

test.beforeEach(async ({ page }) => {
  // Pickers of the operating system cannot be driven here; without them the page falls back to a plain file field.
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, 'showOpenFilePicker');
    Reflect.deleteProperty(Window.prototype, 'showOpenFilePicker');
  });
  await opened(page);
  await stage(page, 'Change').click();
});

function panel(page: Page): Locator {
  return page.getByRole('region', { name: 'Layouts' });
}

async function titles(page: Page): Promise<readonly string[]> {
  const found = await panel(page).locator('.layout .row-title').allInnerTexts();
  return found.map((text) => text.split('\n')[0] ?? '');
}

async function unfold(page: Page, title: string): Promise<void> {
  await panel(page)
    .getByRole('button', { name: `What can be done to ${title}`, exact: true })
    .click();
}

async function chooseFile(page: Page, file: { name: string; mimeType: string; buffer: Buffer }): Promise<void> {
  const choosing = page.waitForEvent('filechooser');
  await panel(page).getByRole('button', { name: 'Take one from a file…' }).click();
  await (await choosing).setFiles(file);
}

test('a layout is branched, named, moved and deleted, and all of it is undone', async ({ page }) => {
  const list = panel(page);
  await list.getByRole('button', { name: 'Branch this layout' }).click();
  await expect.poll(() => titles(page)).toEqual(['Layout 1', 'Layout 1, branch']);
  await unfold(page, 'Layout 1');
  await list.getByRole('button', { name: 'Rename Layout 1', exact: true }).click();
  const field = list.getByRole('textbox', { name: 'Name of Layout 1' });
  await field.fill('   ');
  await field.press('Enter');
  await expect(list.getByRole('alert')).toHaveText('A layout needs a name.');
  await field.fill('Novice');
  await field.press('Enter');
  await expect.poll(() => titles(page)).toEqual(['Novice', 'Layout 1, branch']);
  await list.getByRole('button', { name: 'Rename Novice' }).click();
  await list.getByRole('textbox', { name: 'Name of Novice' }).fill('Never');
  await page.keyboard.press('Escape');
  await expect.poll(() => titles(page)).toEqual(['Novice', 'Layout 1, branch']);

  await list.getByRole('button', { name: 'Move Novice down' }).click();
  await expect.poll(() => titles(page)).toEqual(['Layout 1, branch', 'Novice']);
  await list.getByRole('button', { name: /^Novice/ }).focus();
  await page.keyboard.press('Alt+ArrowUp');
  await expect.poll(() => titles(page)).toEqual(['Novice', 'Layout 1, branch']);
  await expect(list.getByRole('button', { name: /^Novice/ })).toBeFocused();
  await list.getByRole('button', { name: 'Branch Novice' }).click();
  await expect.poll(() => titles(page)).toEqual(['Novice', 'Novice, branch', 'Layout 1, branch']);
  await list.getByRole('button', { name: 'Delete Novice', exact: true }).click();
  await expect.poll(() => titles(page)).toEqual(['Novice, branch', 'Layout 1, branch']);

  const undo = page.getByRole('button', { name: /^Undo/ });
  while (await undo.isEnabled()) await undo.click();
  await expect.poll(() => titles(page)).toEqual(['Layout 1']);
});

test('a layout of another course file is taken as it lies there, with what is to be known about it', async ({
  page,
}) => {
  const buffer = readFileSync('seeds/starters/home-six-poles.course.json');
  await chooseFile(page, { name: 'home.course.json', mimeType: 'application/json', buffer });
  const which = page.getByRole('dialog', { name: 'Which of its layouts?' });
  await which.getByRole('button', { name: /^A fan and a side pass/ }).click();
  const taken = page.getByRole('dialog', { name: 'Taken: A fan and a side pass' });
  await expect(taken).toContainText('It was laid out in an arena of');
  await taken.getByRole('button', { name: 'Close' }).click();
  await expect.poll(() => titles(page)).toEqual(['Layout 1', 'A fan and a side pass']);
  await page.getByRole('button', { name: /^Undo: Take A fan and a side pass/ }).click();
  await expect.poll(() => titles(page)).toEqual(['Layout 1']);
});

test('a file that is no course is refused with a sentence, and nothing is lost', async ({ page }) => {
  await chooseFile(page, { name: 'shopping.json', mimeType: 'application/json', buffer: Buffer.from('{"milk": 2}') });
  const refused = page.getByRole('dialog', { name: 'Nothing was taken' });
  await expect(refused).toContainText('no course');
  await refused.getByRole('button', { name: 'Close' }).click();
  await expect.poll(() => titles(page)).toEqual(['Layout 1']);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
});
