import { expect, type Page, test } from '@playwright/test';
import { opened, openStarter, stage } from './arena.ts';
import { faultsInUse } from './axe.ts';

const PLANNED = { timeout: 60_000 };

async function openDayStarter(page: Page): Promise<void> {
  await openStarter(page, 'larkhollow-day');
  await stage(page, 'Change').click();
}

test('the Change stage in use has no serious fault of access', async ({ page }) => {
  await opened(page);
  await openDayStarter(page);
  await page.getByRole('group', { name: 'Compare with' }).getByRole('checkbox').first().check();
  await page.getByText('Choose what is compared').click();
  await page.getByText('What makes up the difficulty').click();
  expect(await faultsInUse(page, 'compare')).toEqual([]);
  await page.getByRole('combobox', { name: 'Drawn' }).selectOption('side-by-side');
  expect(await faultsInUse(page, 'side by side')).toEqual([]);
  await page.getByRole('tab', { name: 'Change-over' }).click();
  await page.getByLabel('Show the carries in the arena').check(PLANNED);
  expect(await faultsInUse(page, 'change-over')).toEqual([]);
  await page.getByRole('tab', { name: 'Day', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Take this order' })).toBeVisible(PLANNED);
  await page.getByRole('button', { name: /^Open Trail/ }).click();
  await page.getByRole('button', { name: /^Lunch/ }).click();
  expect(await faultsInUse(page, 'day')).toEqual([]);
  await page.getByRole('button', { name: 'Print the day' }).click();
  expect(await faultsInUse(page, 'the day on paper')).toEqual([]);
});

test('the classes of a day are moved by keys alone, and the focus stays with the class', async ({ page }) => {
  await opened(page);
  await openDayStarter(page);
  await page.getByRole('tab', { name: 'Day', exact: true }).click();
  const later = page.getByRole('button', { name: 'Ride Walk-Jog Trail later' });
  await later.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(later).toBeFocused();
  const rows = page.getByRole('list', { name: 'The day' }).locator('.timeline-class');
  await expect(rows.nth(2)).toContainText('Walk-Jog Trail');
});
