import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { arena, opened, placeOf, stage } from './arena.ts';

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
  return page.getByRole('tabpanel', { name: 'Layouts' });
}

async function titles(page: Page): Promise<readonly string[]> {
  const found = await panel(page).locator('.layout .row-title').allInnerTexts();
  return found.map((text) => text.split('\n')[0] ?? '');
}

async function unfold(page: Page, title: string): Promise<void> {
  await panel(page)
    .getByRole('button', { name: `Actions on ${title}`, exact: true })
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

test('another layout lies under the shown one or beside it, and what moved since is told in words', async ({
  page,
}) => {
  await panel(page).getByRole('button', { name: 'Branch this layout' }).click();
  await page.getByRole('tab', { name: 'Compare', exact: true }).click();
  await expect(page.getByRole('checkbox', { name: 'Layout 1', exact: true })).toBeChecked();
  const contents = page.locator('#arena-summary');
  await expect(contents).toContainText('Layout 1, branch is compared with Layout 1.');
  const fan = page.locator('[data-obstacle="fan-1"]');
  await expect(fan).toContainText('as in Layout 1');
  const legend = page.getByRole('list', { name: 'How the line is drawn' });
  await expect(legend).toContainText('Layout 1');

  const place = await placeOf(page, 'fan-1');
  await arena(page).focus();
  const chosen = fan.filter({ hasText: 'chosen' });
  for (let i = 0; i < 20 && (await chosen.count()) === 0; i += 1) await page.keyboard.press('Tab');
  await page.keyboard.press('Shift+ArrowLeft');
  expect((await placeOf(page, 'fan-1')).x).toBeLessThan(place.x);
  await expect(fan).toContainText(/moved .* from Layout 1/);
  await expect(page.locator('.hint-line')).toContainText(/^Fan: moved .* from Layout 1$/);

  await page.getByRole('combobox', { name: 'Drawn' }).selectOption('Side by side');
  const other = page.getByRole('img', { name: /^Layout 1, for comparison: / });
  await expect(other.locator('canvas').first()).toBeVisible();
  const box = await other.boundingBox();
  if (box === null) throw new Error('the other drawing is on the page');
  const scale = Number(await arena(page).getAttribute('data-scale'));
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.wheel(0, -200);
  await expect.poll(async () => Number(await arena(page).getAttribute('data-scale'))).toBeGreaterThan(scale);
  expect(await placeOf(page, 'fan-1')).not.toEqual(place);
});
