/** A pointer over the arena in a real browser: it finds its way by what the page tells everybody, in metres. */
import { expect, type Locator, type Page } from '@playwright/test';

export interface Place {
  readonly x: number;
  readonly y: number;
}

export function arena(page: Page): Locator {
  return page.getByRole('application', { name: 'Arena, seen from above' });
}

/** Opens the page and waits until the arena can be used. */
export async function opened(page: Page): Promise<void> {
  await page.goto('./');
  await expect(arena(page).locator('canvas').first()).toBeVisible();
}

/** Where an obstacle lies, by the list that mirrors the arena. */
export async function placeOf(page: Page, obstacle: string): Promise<Place> {
  const row = page.locator(`[data-obstacle="${obstacle}"]`);
  return { x: Number(await row.getAttribute('data-x')), y: Number(await row.getAttribute('data-y')) };
}

/** Where a place on the ground is on the page, by the arena's own scale and origin. */
export async function onPage(page: Page, { x, y }: Place): Promise<Place> {
  const ground = arena(page);
  const box = await ground.boundingBox();
  if (box === null) throw new Error('the arena is not on the page');
  const scale = Number(await ground.getAttribute('data-scale'));
  const [left = 0, top = 0] = ((await ground.getAttribute('data-origin')) ?? '').split(' ').map(Number);
  const isTurned = (await ground.getAttribute('data-turned')) === 'true';
  const local = isTurned ? { x: left - y * scale, y: top - x * scale } : { x: left + x * scale, y: top - y * scale };
  return { x: box.x + local.x, y: box.y + local.y };
}

/** Presses at one place on the ground, goes to another in steps, and lets go. */
export async function drag(page: Page, from: Place, to: Place): Promise<void> {
  const start = await onPage(page, from);
  const end = await onPage(page, to);
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move(end.x, end.y, { steps: 12 });
  await page.mouse.up();
}

export function stage(page: Page, name: string): Locator {
  return page.getByRole('tablist', { name: 'Stages' }).getByRole('tab', { name: new RegExp(`^${name}`) });
}

/** Shows the list of what to add: on smaller screens it is a tab. */
export async function showTiles(page: Page): Promise<void> {
  const tab = page.getByRole('tab', { name: 'Add', exact: true });
  if ((await tab.count()) > 0) await tab.click();
}

/** Takes everything out of the arena. */
export async function emptied(page: Page): Promise<void> {
  await opened(page);
  await arena(page).press('Control+a');
  await arena(page).press('Delete');
  await expect(page.locator('[data-obstacle]')).toHaveCount(0);
  await showTiles(page);
}

/** Chooses an obstacle in the list beside the arena. */
export async function choose(page: Page, title: string): Promise<void> {
  await page.getByRole('region', { name: 'Obstacles' }).getByRole('button', { name: title }).click();
}

/** Opens a starter by the name of its file. */
export async function openStarter(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Starters…' }).click();
  await page.getByRole('dialog').locator(`[data-starter="${name}"]`).click();
}

/** Begins a course with the form as it stands, but for its title; the rule book is left for later. */
export async function beginCourse(page: Page, { title, unit = 'ft' }: { title: string; unit?: 'ft' | 'm' }) {
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'New course…' }).click();
  const form = page.getByRole('dialog', { name: 'A new course' });
  await form.getByLabel('Title of the course').fill(title);
  await form.getByLabel('Lengths in').selectOption(unit);
  await form.getByLabel('Rule book').selectOption('undecided');
  await form.getByRole('button', { name: 'Begin' }).click();
  await expect(form).toHaveCount(0);
}

/** The page opens as for somebody who was here before: no hints, and nothing moves by itself. */
export async function seenBefore(page: Page): Promise<void> {
  await page.addInitScript(() => localStorage.setItem('polewright-first-visit', '{"hints":3,"example":true}'));
}
