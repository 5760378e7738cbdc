import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { wordBoxes } from '../sheets/read-pdf.ts';
import { drag, opened, placeOf, stage } from './arena.ts';

/** A plan is worked out in the background: seconds on a machine that does other things too. */
const PLANNED = { timeout: 60_000 };

async function panel(page: Page, name: string): Promise<void> {
  await page.getByRole('tab', { name, exact: true }).click();
}

async function exported(page: Page, dialog: Locator): Promise<readonly string[]> {
  const saving = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Export PDF' }).click();
  const bytes = new Uint8Array(readFileSync(await (await saving).path()));
  return wordBoxes(bytes).map((words) => words.map(({ text }) => text).join(' '));
}

/** The titles of the classes of the day, in running order. */
async function runningOrder(page: Page): Promise<readonly string[]> {
  const rows = page.getByRole('list', { name: 'The day' }).locator('.timeline-class .row-title');
  return (await rows.allInnerTexts()).map((text) => text.split('\n')[0] ?? '');
}

async function typed(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill(text);
  await field.press('Enter');
}

async function addClass(page: Page, { title, layout }: { title: string; layout: string }): Promise<void> {
  const begin = page.getByRole('button', { name: 'Plan the day' });
  if (await begin.isVisible()) await begin.click();
  else await page.getByRole('button', { name: 'Class', exact: true }).click();
  const row = page.getByRole('list', { name: 'The day' }).locator('.timeline-class').last();
  await row.getByRole('button', { expanded: false }).first().click();
  await typed(page, 'Class', title);
  await page.getByLabel('Rides', { exact: true }).selectOption(layout);
  await row.getByRole('button', { expanded: true }).click();
}

test('a layout is branched, compared and changed over, a day is ordered, and all of it is undone and redone', async ({
  page,
}) => {
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, 'showSaveFilePicker');
    Reflect.deleteProperty(Window.prototype, 'showSaveFilePicker');
  });
  await opened(page);
  await stage(page, 'Change').click();
  let steps = 0;
  const undo = page.getByRole('button', { name: /^Undo/ });

  await test.step('two obstacles of a branch are dragged', async () => {
    await page.getByRole('button', { name: 'Branch this layout' }).click();
    steps += 1;
    for (const [obstacle, dx, dy] of [
      ['fan-1', -3, 0],
      ['gate-1', 3, 2],
    ] as const) {
      const from = await placeOf(page, obstacle);
      await drag(page, from, { x: from.x + dx, y: from.y + dy });
      steps += 1;
      expect(await placeOf(page, obstacle)).not.toEqual(from);
    }
  });

  await test.step('the comparison says what moved, and what each layout measures', async () => {
    await panel(page, 'Compare');
    await page.getByRole('group', { name: 'Compare with' }).getByRole('checkbox').first().check();
    const differs = page.getByRole('region', { name: /^What differs from/ });
    await expect(differs.getByRole('button')).toHaveCount(2);
    await expect(differs.getByRole('button', { name: /^Fan/ })).toContainText('moved');
    await expect(differs.getByRole('button', { name: /^Gate/ })).toContainText('from the west');
    const table = page.getByRole('region', { name: 'Measures of the layouts' });
    await expect(table.getByRole('row')).toHaveCount(23);
    await expect(table.getByRole('row', { name: /^Line/ }).getByRole('cell')).toHaveCount(2);
    await differs.getByRole('button', { name: /^Fan/ }).hover();
    await expect(page.locator('.hint-line')).toHaveText(/^Fan: moved .* from Layout 1$/);
    await page.getByRole('button', { name: 'Print the comparison' }).click();
    const dialog = page.getByRole('dialog', { name: 'The comparison on paper' });
    const [first = ''] = await exported(page, dialog);
    expect(first).toContain('Compared');
    expect(first).toContain('Difficulty');
    await dialog.getByRole('button', { name: 'Close' }).click();
  });

  await test.step('the change-over is planned and printed', async () => {
    await panel(page, 'Change-over');
    const carries = page.locator('.carries > li');
    await expect(carries.first()).toBeVisible(PLANNED);
    // The gate, and the poles of the fan.
    expect(await carries.count()).toBeGreaterThanOrEqual(4);
    await page.getByRole('button', { name: 'Print the crew’s sheet' }).click();
    const dialog = page.getByRole('dialog', { name: 'The change-over on paper' });
    const pages = (await exported(page, dialog)).join(' ');
    expect(pages).toContain('Truck');
    expect(pages).toContain('Gate from the gate');
    await dialog.getByRole('button', { name: 'Close' }).click();
  });

  await test.step('a day of six classes is put in a better order', async () => {
    await panel(page, 'Day');
    const layouts = ['layout-1', 'layout-2'];
    for (let i = 0; i < 6; i += 1) {
      await addClass(page, { title: `Class ${'ABCDEF'[i]}`, layout: layouts[i % 2] ?? '' });
    }
    expect(await runningOrder(page)).toEqual(['A', 'B', 'C', 'D', 'E', 'F'].map((each) => `Class ${each}`));
    const take = page.getByRole('button', { name: 'Take this order' });
    await expect(take).toBeEnabled(PLANNED);
    await take.click();
    const order = await runningOrder(page);
    // One change-over in the place of five: the classes of a layout follow each other.
    const side = (title: string): number => 'ABCDEF'.indexOf(title.slice(-1)) % 2;
    expect(order.filter((title, i) => i > 0 && side(title) !== side(order[i - 1] ?? ''))).toHaveLength(1);
    await page.getByRole('button', { name: `Ride ${order[0]} later` }).click();
    expect(await runningOrder(page)).toEqual([order[1], order[0], ...order.slice(2)]);
    await undo.click();
    expect(await runningOrder(page)).toEqual(order);
  });

  await test.step('all of it is undone, and redone after the page was loaded again', async () => {
    const order = await runningOrder(page);
    const gate = await placeOf(page, 'gate-1');
    let undone = 0;
    while (await undo.isEnabled()) {
      await undo.click();
      undone += 1;
    }
    expect(undone).toBeGreaterThan(steps + 6);
    await expect(page.getByRole('button', { name: 'Plan the day' })).toBeVisible();
    await expect(page.locator('.save-state')).toHaveText('Saved');
    await page.reload();
    const redo = page.getByRole('button', { name: /^Redo/ });
    for (let i = 0; i < undone; i += 1) await redo.click();
    // One step was undone before; it waits as well.
    await expect(redo).toHaveAccessibleName('Redo: Reorder the classes');
    expect(await placeOf(page, 'gate-1')).toEqual(gate);
    await stage(page, 'Change').click();
    await panel(page, 'Day');
    expect(await runningOrder(page)).toEqual(order);
  });
});
