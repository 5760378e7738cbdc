import { expect, type Locator, type Page, test } from '@playwright/test';
import { drag, opened, placeOf, stage } from './arena.ts';
import { faultsInUse } from './axe.ts';

test('an obstacle is taken out of the order and put in again by keys, then ridden a second time', async ({ page }) => {
  await opened(page);
  await stage(page, 'Ride').click();
  const order = page.getByRole('region', { name: 'Order of obstacles' });
  const rows = order.getByRole('list').first().getByRole('listitem');
  await expect(rows.first()).toBeVisible();
  const count = await rows.count();
  await order.getByRole('button', { name: 'Fan', exact: false }).first().click();
  await page.getByRole('button', { name: 'Take out of the order' }).press('Enter');
  await expect(rows).toHaveCount(count - 1);
  await expect(order.getByRole('heading', { name: 'Not in the order' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Add to the order', exact: true })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(rows).toHaveCount(count);
  await expect(rows.last()).toContainText('Fan');
  await page.keyboard.press('Enter');
  await expect(rows).toHaveCount(count + 1);
  await expect(page.getByRole('button', { name: 'Take out of the order' })).toHaveCount(2);
  for (let step = 0; step < 3; step += 1) await page.getByRole('button', { name: /^Undo: / }).click();
  await expect(rows).toHaveCount(count);
  await expect(rows.last()).not.toContainText('Fan');
});

function order(page: Page): Locator {
  return page.getByRole('region', { name: 'Order of obstacles' });
}

/** Chooses the obstacle of a row of the order. */
async function ridden(page: Page, row: number): Promise<void> {
  await order(page).getByRole('list').first().getByRole('listitem').nth(row).getByRole('button').first().click();
}

test('the go is played, paused and stepped through; the slider and the words follow', async ({ page }) => {
  await opened(page);
  await stage(page, 'Ride').click();
  const slider = page.getByRole('slider', { name: 'Time in the go' });
  const time = async () => Number(await slider.inputValue());
  const faster = page.getByRole('button', { name: '4 times as fast' });
  await faster.click();
  await expect(faster).toHaveAttribute('aria-pressed', 'true');
  await page.getByRole('button', { name: 'Play the ride', exact: true }).click();
  await expect.poll(time).toBeGreaterThan(1);
  await page.getByRole('button', { name: 'Pause' }).click();
  const paused = await time();
  await page.getByRole('button', { name: 'One landing on' }).click();
  const stepped = await time();
  expect(stepped).toBeGreaterThan(paused);
  await expect(page.locator('[data-ride-told]')).toHaveText(/^Stop \d+ of \d+: .+ number \d/);
  await page.getByRole('button', { name: 'One landing back' }).click();
  expect(await time()).toBeLessThan(stepped);
  await slider.focus();
  await page.keyboard.press('End');
  await expect(slider).toHaveAttribute('aria-valuetext', /^(\d+) of \1 seconds: /);
});

test('who wants no motion sees the horse go when play is pressed, and not before', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await opened(page);
  await stage(page, 'Ride').click();
  await page.getByRole('button', { name: '4 times as fast' }).click();
  const slider = page.getByRole('slider', { name: 'Time in the go' });
  await slider.evaluate((element) => {
    const seen = new Set<string>();
    Object.assign(window, { seen });
    const look = () => {
      seen.add((element as HTMLInputElement).value);
      requestAnimationFrame(look);
    };
    look();
  });
  expect(await slider.inputValue()).toBe('0');
  await page.getByRole('button', { name: 'Play the ride', exact: true }).click();
  await expect.poll(async () => Number(await slider.inputValue())).toBeGreaterThan(42);
  const places = await page.evaluate(() => (window as unknown as { seen: Set<string> }).seen.size);
  // A frame plays a second at most, so forty seconds are forty places; from landing to landing they would be fewer.
  expect(places).toBeGreaterThan(40);
});

/** Waits until nothing on the page has changed for a second: what is worked out later has come. */
function atRest(page: Page): Promise<void> {
  return page.evaluate(
    () =>
      new Promise<void>((done) => {
        let timer = setTimeout(done, 1000);
        const watcher = new MutationObserver(() => {
          clearTimeout(timer);
          timer = setTimeout(done, 1000);
        });
        watcher.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
      }),
  );
}

test('playing draws nothing anew but the horse and the cursor', async ({ page }) => {
  await opened(page);
  await stage(page, 'Ride').click();
  for (const name of ['Order of obstacles', 'Time', 'Gaits shown']) {
    await expect(page.getByRole('region', { name }).getByRole('listitem').first()).toBeVisible();
  }
  await expect(page.getByText('Choose an obstacle in the order')).toBeVisible();
  await expect(page.locator('.save-state')).toHaveText('Saved');
  await atRest(page);
  await page.getByRole('button', { name: 'Play the ride', exact: true }).click();
  const changed = await page.evaluate(
    () =>
      new Promise<string[]>((done) => {
        const places = new Set<string>();
        const watcher = new MutationObserver((records) => {
          for (const { target } of records) {
            const element = target instanceof Element ? target : target.parentElement;
            places.add(element?.closest('.play-bar, .ride-cursor, .said')?.className ?? element?.className ?? '');
          }
        });
        watcher.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
        setTimeout(() => {
          watcher.disconnect();
          done([...places]);
        }, 1500);
      }),
  );
  expect(changed.filter((place) => !['play-bar', 'ride-cursor'].includes(place))).toEqual([]);
});

test('a handle is dragged along its pole: the landings go along, and undo puts them back', async ({ page }) => {
  await opened(page);
  await stage(page, 'Ride').click();
  await ridden(page, 1);
  const all = page.getByRole('textbox', { name: 'All poles' });
  const before = await all.inputValue();
  const middle = await placeOf(page, 'run-1');
  await page.getByRole('application').focus();
  // The middle pole of five lies in the middle of the run, and the line goes over its middle.
  await drag(page, middle, { x: middle.x, y: middle.y + 0.6 });
  await expect(all).not.toHaveValue(before);
  await expect(page.locator('[data-said]')).toContainText('from the nearer end');
  expect(await placeOf(page, 'run-1'), 'the poles stay').toEqual(middle);
  await page.getByRole('button', { name: /^Undo: Move the line over/ }).click();
  await expect(all).toHaveValue(before);
});

test('the line over one pole is chosen and moved by keys, and typed', async ({ page }) => {
  await opened(page);
  await stage(page, 'Ride').click();
  await ridden(page, 1);
  const second = page.getByRole('textbox', { name: 'Pole 2', exact: true });
  const before = await second.inputValue();
  await page.getByRole('combobox', { name: 'A handle moves' }).selectOption({ label: 'Pole 2 alone' });
  await page.getByRole('application').focus();
  await page.keyboard.press('Shift+ArrowUp');
  await expect(second).not.toHaveValue(before);
  await expect(page.getByRole('textbox', { name: 'All poles' })).toHaveValue('');
  await second.fill(before);
  await second.press('Enter');
  await expect(page.getByRole('textbox', { name: 'All poles' })).toHaveValue(before);
});

test('the table tells clock, lead and landings, and follows a change of gait', async ({ page }) => {
  await opened(page);
  await stage(page, 'Ride').click();
  await page.getByRole('button', { name: 'Table' }).click();
  const table = page.getByRole('region', { name: 'The go as a table' });
  for (const name of ['On the clock', 'Lead', 'Changes', 'Tightest turn', 'Landings']) {
    await expect(table.getByRole('columnheader', { name })).toBeVisible();
  }
  await ridden(page, 1);
  const row = table.getByRole('row').nth(2);
  await expect(row).toContainText('Jog');
  await page.getByRole('combobox', { name: 'Gait to it' }).selectOption('lope');
  await expect(row).toContainText('Lope');
  await expect(row).toContainText('lead');
});

test('a larger class takes longer, and is told which obstacle to shorten first', async ({ page }) => {
  await opened(page);
  await stage(page, 'Ride').click();
  const time = page.getByRole('region', { name: 'Time' });
  const rows = time.getByRole('table').getByRole('row');
  await expect(rows).toHaveCount(4);
  await expect(rows.nth(3)).toContainText('70');
  const entries = time.getByRole('textbox', { name: 'Entries' });
  await entries.fill('70');
  await entries.press('Enter');
  await expect(time).toContainText('70 goes');
  const may = time.getByRole('textbox', { name: 'Time allowed' });
  await may.fill('2 h');
  await may.press('Enter');
  await expect(time).toContainText('longer than the 2 h 00 min allowed');
  await expect(time.getByRole('heading', { name: 'Shorten first' })).toBeVisible();
  await expect(rows.nth(1)).not.toContainText('over');
  await expect(rows.nth(3)).toContainText('over');
});

test('the Ride stage in use has no serious fault of access', async ({ page }) => {
  await opened(page);
  await stage(page, 'Ride').click();
  await ridden(page, 4);
  await page.getByRole('button', { name: 'Hoof prints' }).click();
  await page.getByRole('button', { name: 'One landing on' }).click();
  expect(await faultsInUse(page, 'strip')).toEqual([]);
  await page.getByRole('button', { name: 'Table' }).click();
  expect(await faultsInUse(page, 'table')).toEqual([]);
});

test('a way is left to the whole ride, chosen against it, and the better way is taken back at Check', async ({
  page,
}) => {
  await opened(page);
  await stage(page, 'Ride').click();
  await order(page)
    .getByRole('button', { name: /Side pass/ })
    .first()
    .click();
  const way = page.getByLabel('Which way');
  await expect(way).toHaveValue('right-return');
  await way.selectOption('left');
  await stage(page, 'Check').click();
  const offer = page.getByRole('button', { name: /^Ride it the better way: / });
  await offer.click();
  await expect(offer).toHaveCount(0);
  await stage(page, 'Ride').click();
  await expect(way).toHaveValue('right-return');
  await way.selectOption({ label: 'Best for the whole ride: side pass right over the pole, facing the other way' });
  await expect(way).toHaveValue('*');
  await expect(way.getByRole('option')).toHaveCount(5);
  await page.getByRole('button', { name: /^Undo: / }).click();
  await expect(way).toHaveValue('right-return');
});
