import { devices, expect, type Page, test } from '@playwright/test';
import { arena, onPage, opened, openStarter, placeOf, stage } from './arena.ts';
import { axe } from './axe.ts';

const STAGES = ['Set', 'Ride', 'Check', 'Post', 'Change'];
const SIZES = [
  { width: 1366, height: 768 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
];
/** WCAG 2.0 to 2.2, A and AA, and what is good practice beyond. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa', 'best-practice'];

/** The slowest rule by far. */
const CONTRAST = 'color-contrast';

/** Every fault of any weight that axe finds on the page as it is now, each once. */
async function faults(page: Page, where: string, skipped: readonly string[]): Promise<readonly string[]> {
  const { violations } = await axe(page)
    .withTags(RULES)
    .disableRules([...skipped])
    .analyze();
  return violations.map(({ id, nodes }) => `${where}: ${id} ${nodes.map((node) => node.target).join(' | ')}`);
}

/** In dark and in forced colours only the colours can differ. */
const COLOURS = { dark: { colorScheme: 'dark' }, forced: { forcedColors: 'active' } } as const;

async function colourFaults(page: Page, where: string): Promise<readonly string[]> {
  const found: string[] = [];
  for (const [name, media] of Object.entries(COLOURS)) {
    await page.emulateMedia({ ...media, reducedMotion: 'reduce' });
    const { violations } = await axe(page).withRules([CONTRAST]).analyze();
    found.push(...violations.map(({ nodes }) => `${where}, ${name}: ${nodes.map((node) => node.target).join(' | ')}`));
    await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none', reducedMotion: 'reduce' });
  }
  return found;
}

/** Every panel of the stage: where panels are tabs, one after the other. */
async function eachPanel(page: Page, look: (panel: string) => Promise<void>): Promise<void> {
  const tabs = page.getByRole('main').getByRole('tab');
  const count = await tabs.count();
  if (count === 0) return look('');
  for (let tab = 0; tab < count; tab += 1) {
    await tabs.nth(tab).click();
    await look((await tabs.nth(tab).textContent()) ?? '');
  }
}

interface DialogDoor {
  readonly stage: string;
  readonly tab?: string;
  readonly menu?: string;
  readonly button: string;
}

/** Dialogs, each by the stage, the menu or the tab on small screens, and the button that opens it. */
const DIALOGS: readonly DialogDoor[] = [
  { stage: 'Set', button: 'Help' },
  { stage: 'Set', menu: 'File', button: 'New course…' },
  { stage: 'Set', menu: 'File', button: 'Starters…' },
  { stage: 'Set', menu: 'File', button: 'Earlier states…' },
  { stage: 'Set', tab: 'Truck', button: 'Edit the list' },
  { stage: 'Check', tab: 'Rule book', button: 'Compare with another book' },
  { stage: 'Check', tab: 'Rule book', button: 'Set a house rule' },
  { stage: 'Check', tab: 'Horse', button: 'All assumptions, with sources' },
];

for (const size of SIZES) {
  test(`nothing has a fault of access at ${size.width} x ${size.height}`, async ({ page }) => {
    // Colours do not depend on the size.
    const isLargest = size === SIZES[0];
    const skipped = isLargest ? [] : [CONTRAST];
    await page.setViewportSize(size);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await opened(page);
    await page.getByRole('button', { name: 'File', exact: true }).click();
    expect(await faults(page, 'File menu', skipped)).toEqual([]);
    await page.keyboard.press('Escape');
    await openStarter(page, 'practice-with-faults');
    await arena(page).focus();
    await page.keyboard.press('Tab');
    for (const name of STAGES) {
      await stage(page, name).click();
      if (name === 'Post') await expect(page.locator('img.page').first()).toBeVisible();
      await eachPanel(page, async (panel) => {
        expect(await faults(page, `${name} ${panel}`, skipped)).toEqual([]);
      });
      if (isLargest) expect(await colourFaults(page, name)).toEqual([]);
    }
    for (const { stage: where, tab, menu, button } of DIALOGS) {
      await stage(page, where).click();
      const panel = page.getByRole('tab', { name: tab ?? '\u0000', exact: true });
      if (tab !== undefined && (await panel.count()) > 0) await panel.click();
      if (menu !== undefined) await page.getByRole('button', { name: menu, exact: true }).click();
      await page.getByRole('button', { name: button }).first().click({ timeout: 60_000 });
      const dialog = page.getByRole('dialog');
      await expect(dialog).toBeVisible();
      expect(await faults(page, `dialog ${button}`, skipped)).toEqual([]);
      await page.keyboard.press('Escape');
      await expect(dialog).toHaveCount(0);
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
    await expect(page.getByRole('textbox', { name: 'Name', exact: true })).toHaveValue('Jog-overs');
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
