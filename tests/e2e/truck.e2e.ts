import { expect, test } from '@playwright/test';
import { opened } from './arena.ts';

test('a line is put on the truck and taken off again', async ({ page }) => {
  await opened(page);
  await page.getByRole('button', { name: 'Edit the list' }).click();
  const dialog = page.getByRole('dialog', { name: 'What is on the truck' });
  const lines = dialog.getByRole('listitem');
  await expect(lines.first()).toBeVisible();
  const count = await lines.count();
  await dialog.getByLabel('Length').fill('long');
  await dialog.getByRole('button', { name: 'Put it on the truck' }).click();
  await expect(dialog.getByRole('alert')).toBeVisible();
  await expect(lines).toHaveCount(count);
  await dialog.getByLabel('Length').fill('9 ft');
  await dialog.getByLabel('How many', { exact: true }).fill('3');
  await dialog.getByRole('button', { name: 'Put it on the truck' }).press('Enter');
  await expect(lines).toHaveCount(count + 1);
  await dialog.getByRole('button', { name: 'Close' }).click();
  const truck = page.getByRole('region', { name: 'Truck' });
  await expect(truck.getByText(`Pole, length 9'`)).toBeVisible();
  await expect(truck.getByText('3 of 3 left')).toBeVisible();
  await page.getByRole('button', { name: 'Edit the list' }).click();
  await dialog.getByRole('button', { name: `Delete from the truck: Pole, length 9'` }).click();
  await expect(lines).toHaveCount(count);
});
