import AxeBuilder from '@axe-core/playwright';
import { devices, expect, test } from '@playwright/test';
import { onPage, opened, placeOf, stage } from './arena.ts';

const STAGES = ['Set', 'Ride', 'Check', 'Post', 'Change'];

for (const scheme of ['light', 'dark'] as const) {
  test(`no stage has a serious fault of access (${scheme})`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme });
    await opened(page);
    for (const name of STAGES) {
      await stage(page, name).click();
      if (name === 'Post') await expect(page.locator('img.page').first()).toBeVisible();
      const { violations } = await new AxeBuilder({ page }).analyze();
      const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
      const told = grave.map(({ id, nodes }) => `${name}: ${id} ${nodes.map((node) => node.target).join(' | ')}`);
      expect(told).toEqual([]);
    }
  });
}

test('help tells the stages and the keys, and Escape closes it', async ({ page }) => {
  await opened(page);
  await page.getByRole('button', { name: 'Help' }).click();
  const help = page.getByRole('dialog', { name: 'Help' });
  await expect(help).toContainText('the judge decide');
  await expect(help.getByRole('row')).not.toHaveCount(0);
  await page.keyboard.press('Escape');
  await expect(help).toBeHidden();
});

test('the strip has a twin as a table', async ({ page }) => {
  await opened(page);
  await page.getByRole('button', { name: 'Table' }).click();
  const rows = page.getByRole('region', { name: 'The go as a table' }).getByRole('row');
  await expect(rows).toHaveCount(1 + (await page.locator('[data-obstacle]').count()));
});

test.describe('on a phone', () => {
  const { defaultBrowserType: _, ...phone } = devices['Pixel 7'];
  test.use(phone);

  test('every stage fits the width and the panels are tabs', async ({ page }) => {
    await opened(page);
    for (const name of STAGES) {
      await stage(page, name).click();
      const wide = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(wide, name).toBeLessThanOrEqual(0);
      await expect(page.getByRole('tablist', { name: 'Panels' })).toBeVisible();
    }
    await stage(page, 'Set').click();
    await page.getByRole('tab', { name: 'Line' }).click();
    await expect(page.getByRole('list', { name: 'The go from start to end' })).toBeVisible();
  });

  test('what is tapped in the arena opens its tape, and the legend is folded away until it is asked for', async ({
    page,
  }) => {
    await opened(page);
    await expect(page.getByRole('tab', { name: 'Add', exact: true })).toHaveAttribute('aria-selected', 'true');
    const fan = await onPage(page, await placeOf(page, 'run-1'));
    await page.touchscreen.tap(fan.x, fan.y);
    await expect(page.getByRole('tab', { name: 'Tape' })).toHaveAttribute('aria-selected', 'true');
    await expect(page.getByRole('textbox', { name: 'Name', exact: true })).toHaveValue('Run of poles');
    const legend = page.getByRole('list', { name: 'How the line is drawn' });
    await expect(legend).toHaveCount(0);
    await page.getByRole('button', { name: 'Show the legend of the line' }).tap();
    await expect(legend).toBeVisible();
    await page.getByRole('button', { name: 'Hide the legend' }).tap();
    await expect(legend).toHaveCount(0);
  });

  test('everything that is tapped is large enough for a thumb and inside the screen', async ({ page }) => {
    await opened(page);
    for (const name of STAGES) {
      await stage(page, name).tap();
      const tabs = page.getByRole('tablist', { name: 'Panels' }).getByRole('tab');
      for (let tab = 0; tab < (await tabs.count()); tab += 1) {
        await tabs.nth(tab).tap();
        // What lies on the strip is to scale; its twin is the table.
        const small = await page
          .locator('button:visible, select:visible, input:visible, textarea:visible')
          .evaluateAll((all) =>
            all
              .filter((each) => each.closest('.strip-items') === null)
              .map((each) => ({ box: each.getBoundingClientRect(), name: each.outerHTML.slice(0, 80) }))
              .filter(({ box }) => box.width < 44 || box.height < 44 || box.left < 0 || box.right > innerWidth)
              .map(({ box, name: what }) => `${what} ${box.width} x ${box.height} at ${box.left}`),
          );
        expect(small, `${name}, ${await tabs.nth(tab).textContent()}`).toEqual([]);
      }
    }
  });
});
