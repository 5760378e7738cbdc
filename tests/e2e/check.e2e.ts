import { expect, type Locator, type Page, test } from '@playwright/test';
import { onPage, opened, openStarter, type Place, stage } from './arena.ts';
import { axe, faultsInUse } from './axe.ts';

async function faulty(page: Page): Promise<Locator> {
  await opened(page);
  await openStarter(page, 'practice-with-faults');
  await stage(page, 'Check').click();
  const panel = page.getByRole('region', { name: 'Findings', exact: true });
  await expect(panel.locator('[data-finding]').first()).toBeVisible();
  return panel;
}

/** The card of the finding that says exactly this. */
function cardOf(panel: Locator, says: string): Locator {
  return panel
    .locator('[data-finding]')
    .filter({ has: panel.page().getByRole('heading', { name: says, exact: true }) });
}

/** Where the badge of an obstacle is on the page: on a stem above the place that it is about. */
async function badgeOf(page: Page, obstacle: string): Promise<Place> {
  const [x = 0, y = 0] = ((await page.locator(`[data-obstacle="${obstacle}"]`).getAttribute('data-badge')) ?? '')
    .split(' ')
    .map(Number);
  const foot = await onPage(page, { x, y });
  return { x: foot.x, y: foot.y - 24 };
}

/** Opens the card of a finding, which shows its fixes. */
async function openCard(card: Locator): Promise<void> {
  const door = card.locator('.finding-door');
  if ((await door.getAttribute('aria-expanded')) === 'false') await door.click();
}

/** How many findings the cards stand for. */
async function countOf(cards: Locator): Promise<number> {
  const counts = await cards.evaluateAll((all) => all.map((each) => Number(each.getAttribute('data-count'))));
  return counts.reduce((sum, each) => sum + each, 0);
}

test('a fix that is offered mends what was found, with one click and one undo', async ({ page }) => {
  const panel = await faulty(page);
  const cards = panel.locator('[data-finding]');
  const count = await cards.count();
  const gap = panel.locator('[data-finding="gap-band"]').first();
  const says = (await gap.locator('.finding-door span').textContent()) ?? '';
  await openCard(gap);
  await expect(gap).toContainText('Source:');
  await gap.locator('.remedy').first().click();
  await expect(cardOf(panel, says)).toHaveCount(0);
  // The next finding opens and has the focus, so that the work goes on.
  await expect(panel.locator('.finding-door:focus')).toHaveAttribute('aria-expanded', 'true');
  expect(await cards.count()).toBeLessThan(count);
  await page.getByRole('button', { name: /^Undo: / }).click();
  await expect(cardOf(panel, says)).toHaveCount(1);
  await expect(cards).toHaveCount(count);
});

test('a card says how heavy, what is allowed and measured, why, and how good its source is', async ({ page }) => {
  const panel = await faulty(page);
  const gap = panel.locator('[data-finding="gap-band"]').first();
  await openCard(gap);
  await expect(gap).toContainText('Must be fixed');
  await expect(gap.getByRole('img')).toHaveAccessibleName(
    `Measured 2' 6"; allowed 3' to 3' 6", or 6' to 7', or another whole multiple.`,
  );
  await expect(gap).toContainText('A gap between two strides');
  await expect(gap).toContainText('rule 216');
  await expect(gap.getByText('rule text', { exact: true })).toBeVisible();
});

test('findings are grouped by obstacle or by check, and stay as many', async ({ page }) => {
  const panel = await faulty(page);
  const count = await countOf(panel.locator('[data-finding]'));
  await expect(panel.getByRole('heading', { level: 3, name: /^2 Jog-overs/ })).toBeVisible();
  await panel.getByRole('button', { name: 'By check' }).click();
  await expect(panel.getByRole('heading', { level: 3, name: /^Every gap between poles suits/ })).toBeVisible();
  await expect(panel.getByRole('heading', { level: 3, name: /^2 Jog-overs/ })).toHaveCount(0);
  expect(await countOf(panel.locator('[data-finding]'))).toBe(count);
  await stage(page, 'Set').click();
  await stage(page, 'Check').click();
  await expect(panel.getByRole('button', { name: 'By check' })).toHaveAttribute('aria-pressed', 'true');
});

test('all that is safe is mended in one step, told, and taken back in one', async ({ page }) => {
  const panel = await faulty(page);
  const cards = panel.locator('[data-finding]');
  const count = await cards.count();
  await panel.getByRole('button', { name: 'Fix all that are safe' }).click();
  const told = panel.getByRole('status');
  await expect(told).toContainText(/\d+ fixes made, \d+ findings still open/);
  await expect(told.getByRole('listitem').first()).toBeVisible();
  const left = Number(/(\d+) findings still open/.exec((await told.textContent()) ?? '')?.[1]);
  expect(left).toBeLessThan(count);
  await expect(cards).toHaveCount(left);
  await expect(panel.locator('[data-finding="gap-band"]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo: Fix all that are safe' }).click();
  await expect(cards).toHaveCount(count);
  await expect(told).toBeEmpty();
});

test('a finding is waived only with a reason, stays waived after the page is loaded again, and is opened again', async ({
  page,
}) => {
  const panel = await faulty(page);
  const truck = panel.locator('[data-finding="truck"]');
  await openCard(truck);
  await truck.getByRole('button', { name: 'Waive with a reason' }).click();
  const reason = truck.getByRole('textbox', { name: 'Reason' });
  await expect(reason).toBeFocused();
  await reason.press('Enter');
  await expect(truck.getByRole('alert')).toContainText('Give a reason');
  await reason.fill('Two poles come from the barn');
  await reason.press('Enter');
  await openCard(truck);
  await expect(truck).toContainText('It stands because: Two poles come from the barn');
  await expect(truck.locator('.remedy')).toHaveCount(0);
  await expect(panel.locator('.findings-summary')).toContainText('Waived: 1');
  await page.reload();
  await stage(page, 'Check').click();
  await openCard(truck);
  await expect(truck).toContainText('It stands because: Two poles come from the barn');
  await stage(page, 'Post').click();
  await page.getByLabel('Sheet').selectOption({ label: 'Designer’s copy' });
  const preview = page.getByRole('region', { name: /^Preview/ });
  await expect(page.getByRole('group', { name: 'Pages' })).toContainText(/Page 1 of/);
  await preview.press('End');
  await expect(page.getByRole('img', { name: /findings and waivers, for the designer/ }).first()).toBeVisible();
  await stage(page, 'Check').click();
  await openCard(truck);
  await truck.getByRole('button', { name: 'Take the waiver back' }).click();
  await expect(truck).not.toContainText('It stands because');
  await expect(panel.locator('.findings-summary')).not.toContainText('Waived');
});

test('two rule books are compared on the same course', async ({ page }) => {
  await faulty(page);
  await page.getByRole('button', { name: 'Compare with another book' }).click();
  const dialog = page.getByRole('dialog', { name: 'Compare two rule books' });
  await dialog.getByLabel(/and the same course under/).selectOption({ label: 'EWU, Germany' });
  await expect(dialog.getByRole('status')).toContainText(/[1-9]\d* found by both, [1-9]\d* only by American Mule/);
  for (const by of ['only-a', 'only-b', 'both']) {
    await expect(dialog.locator(`[data-by="${by}"]`).first()).toContainText(/\w+\./);
  }
  await expect(dialog.locator('[data-by="both"]').first()).toContainText('lie in one place');
  await expect(dialog).toContainText('the judge decide');
  const { violations } = await axe(page).include('dialog').analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
});

test('what the book does not say is told in sentences, and the level says what it changes', async ({ page }) => {
  await faulty(page);
  const panel = page.getByRole('region', { name: 'Rule book', exact: true });
  await expect(panel).toContainText('This level changes nothing');
  await panel.getByLabel('Level of the class').selectOption({ label: 'Walk and jog' });
  await expect(panel.getByRole('region', { name: 'What this level changes' })).toContainText(
    'Parts of the course at the lope: none',
  );
  const silence = panel.getByText('This book does not say anything about the length of a water box.');
  await expect(silence).toBeHidden();
  await panel.getByText(/^What this book does not say/).click();
  await expect(silence).toBeVisible();
});

test('the faulty course has no fault of access at Check, with a form and a fold open', async ({ page }) => {
  const panel = await faulty(page);
  await openCard(panel.locator('[data-finding="gap-band"]').first());
  await expect(panel.getByText('Trying fixes…')).toHaveCount(0);
  await panel.getByRole('button', { name: 'Waive with a reason' }).first().click();
  await page.keyboard.press('Enter');
  await page.getByText(/^What this book does not say/).click();
  expect(await faultsInUse(page, 'Check', '.side')).toEqual([]);
});

test('a finding shows its place in the arena and chooses what it is about', async ({ page }) => {
  const panel = await faulty(page);
  const ground = page.getByRole('application');
  const before = await ground.getAttribute('data-origin');
  const gap = panel.locator('[data-finding="gap-band"]').first();
  await openCard(gap);
  await gap.getByRole('button', { name: 'Show in the arena' }).press('Enter');
  await expect(ground).not.toHaveAttribute('data-origin', before ?? '');
  await expect(page.locator('[data-obstacle]').filter({ hasText: 'chosen' })).toHaveCount(1);
});

test('the ground that a backing horse sweeps is drawn when its lane is chosen, and only at Check', async ({ page }) => {
  const panel = await faulty(page);
  const rows = panel.getByRole('region', { name: 'Is there room to turn and back?' });
  const lane = rows.getByRole('button', { name: /Back-through lane/ });
  await expect(lane).toContainText('to spare at pole');
  await lane.click();
  await expect(lane).toHaveAttribute('aria-pressed', 'true');
  await page.mouse.move(2, 2);
  const ground = page.getByRole('application');
  const swept = await ground.screenshot();
  await stage(page, 'Change').click();
  await stage(page, 'Check').click();
  await expect(lane).toBeVisible();
  expect((await ground.screenshot()).equals(swept)).toBe(true);
  await ground.press('Escape');
  await expect(lane).toHaveAttribute('aria-pressed', 'false');
  expect((await ground.screenshot()).equals(swept)).toBe(false);
});

test('a house rule takes the place of a limit, says so, and is removed again', async ({ page }) => {
  await opened(page);
  await stage(page, 'Check').click();
  const findings = page.getByRole('region', { name: 'Findings', exact: true });
  await expect(findings).not.toContainText('long gaps');
  await page.getByRole('button', { name: 'Set a house rule' }).click();
  const dialog = page.getByRole('dialog', { name: 'Set a house rule' });
  await dialog.getByLabel('What it limits').selectOption({ label: 'Gap between poles at the jog' });
  await dialog.getByLabel('Least').fill(`3' 4"`);
  await dialog.getByLabel('Most').fill(`3' 6"`);
  await dialog.getByRole('button', { name: 'Set the house rule' }).click();
  await expect(dialog.getByRole('alert')).toContainText('Give a reason');
  await dialog.getByLabel('Reason').fill('The show wants long gaps');
  await dialog.getByRole('button', { name: 'Set the house rule' }).click();
  const house = page.getByRole('region', { name: 'House rules' });
  await expect(house).toContainText(`3' 4" to 3' 6"`);
  await expect(house.getByText('house rule', { exact: true })).toBeVisible();
  await openCard(findings.locator('[data-finding="gap-band"]').first());
  await expect(findings).toContainText('house rule: The show wants long gaps');
  await house.getByRole('button', { name: /^Delete the house rule/ }).click();
  await expect(findings).not.toContainText('long gaps');
});

test('another horse is chosen, and what is assumed of it is told with sources', async ({ page }) => {
  await opened(page);
  await stage(page, 'Check').click();
  const panel = page.getByRole('region', { name: 'Horse', exact: true });
  const before = await panel.locator('dl').textContent();
  await panel.getByLabel('Ridden by').selectOption({ index: 1 });
  await expect(panel.locator('dl')).not.toHaveText(before ?? '');
  await panel.getByRole('button', { name: 'All assumptions, with sources' }).click();
  const dialog = page.getByRole('dialog', { name: /^Assumptions/ });
  await expect(dialog.getByText('estimate', { exact: true }).first()).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
});

test('the horse is shown going through a lane, place after place, by a button or by the slider', async ({ page }) => {
  await opened(page);
  await stage(page, 'Check').click();
  const section = page.getByRole('region', { name: 'Is there room to turn and back?' });
  await section.getByRole('button', { name: /Back-through/ }).click();
  const slider = section.getByRole('slider', { name: 'Where the horse is on its way through' });
  await expect(slider).toHaveValue('0');
  await slider.focus();
  await page.keyboard.press('ArrowRight');
  await expect(slider).toHaveAttribute('aria-valuetext', /^Place 2 of \d+$/);
  const most = await slider.getAttribute('max');
  await section.getByRole('button', { name: 'Show it going through' }).click();
  await expect(slider).toHaveValue(most ?? '');
});

test('a badge opens its finding beside its fix, and the way back leads to where it was pressed', async ({ page }) => {
  await faulty(page);
  await stage(page, 'Set').click();
  const badge = await badgeOf(page, 'run-1');
  await page.mouse.click(badge.x, badge.y);
  const panel = page.getByRole('region', { name: 'Findings', exact: true });
  const door = panel.locator('.finding-door:focus');
  await expect(door).toHaveAttribute('aria-expanded', 'true');
  await expect(door).toContainText('Gaps 1 to 3 of the set of jog-overs (obstacle 2)');
  const card = panel.locator('.finding', { has: page.locator('.finding-door:focus') });
  await expect(card.locator('.remedy').first()).toBeInViewport();
  await panel.getByRole('button', { name: 'Back to Set' }).press('Enter');
  await expect(stage(page, 'Set')).toHaveAttribute('aria-selected', 'true');
  await expect(page.getByRole('application')).toBeFocused();
});

test('on a phone a tapped badge brings its finding up', async ({ browser }) => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  const page = await context.newPage();
  await opened(page);
  await openStarter(page, 'practice-with-faults');
  await expect(page.locator('[data-obstacle="run-1"][data-badge]')).toBeAttached();
  const badge = await badgeOf(page, 'run-1');
  await page.touchscreen.tap(badge.x, badge.y);
  await expect(page.getByRole('tab', { name: 'Findings' })).toHaveAttribute('aria-selected', 'true');
  await expect(page.locator('.finding-door:focus')).toContainText('Gaps 1 to 3 of the set of jog-overs (obstacle 2)');
  await context.close();
});

test('keys go on to the next finding and back, in the arena and in the list', async ({ page }) => {
  const panel = await faulty(page);
  const ground = page.getByRole('application');
  await ground.focus();
  await page.keyboard.press('.');
  await expect(page.locator('[data-told]')).toContainText(/^Finding 1 of \d+: /);
  await page.keyboard.press('.');
  await expect(page.locator('[data-told]')).toContainText(/^Finding 2 of /);
  await page.keyboard.press(',');
  await expect(page.locator('[data-told]')).toContainText(/^Finding 1 of /);
  await expect(ground).toBeFocused();
  await page.keyboard.press('i');
  const doors = panel.locator('.finding-door');
  await expect(doors.first()).toBeFocused();
  await page.keyboard.press('.');
  await expect(doors.nth(1)).toBeFocused();
  await expect(doors.nth(1)).toHaveAttribute('aria-expanded', 'true');
  await page.keyboard.press(',');
  await expect(doors.first()).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(ground).toBeFocused();
});
