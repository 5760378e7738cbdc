import { expect, test } from '@playwright/test';
import { opened, stage } from './arena.ts';

test('an obstacle is taken out of the go and put in again by keys, then ridden a second time', async ({ page }) => {
  await opened(page);
  await stage(page, 'Ride').click();
  const order = page.getByRole('region', { name: 'Order of the go' });
  const rows = order.getByRole('list').first().getByRole('listitem');
  await expect(rows.first()).toBeVisible();
  const count = await rows.count();
  await order.getByRole('button', { name: 'Fan', exact: false }).first().click();
  await page.getByRole('button', { name: 'Take out of the go' }).press('Enter');
  await expect(rows).toHaveCount(count - 1);
  await expect(order.getByRole('heading', { name: 'Not in the go' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Add to the go', exact: true })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(rows).toHaveCount(count);
  await expect(rows.last()).toContainText('Fan');
  await page.keyboard.press('Enter');
  await expect(rows).toHaveCount(count + 1);
  await expect(page.getByRole('button', { name: 'Take out of the go' })).toHaveCount(2);
  for (let step = 0; step < 3; step += 1) await page.getByRole('button', { name: /^Undo: / }).click();
  await expect(rows).toHaveCount(count);
  await expect(rows.last()).not.toContainText('Fan');
});
