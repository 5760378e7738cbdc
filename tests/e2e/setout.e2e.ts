/** The set-out in the arena, as a crew has it: on a phone, where there is no connection. */
import { expect, type Locator, type Page, test } from '@playwright/test';
import { opened, openStarter, stage } from './arena.ts';
import { axe } from './axe.ts';

const PHONE = { width: 390, height: 844 };
const DESKTOP = { width: 1366, height: 768 };
const SIDEWAYS = { width: 844, height: 390 };
/** A plan is worked out in the background. */
const PLANNED = { timeout: 60_000 };

function companion(page: Page): Locator {
  return page.getByRole('dialog', { name: /^Part \d+ of \d+/ });
}

/** Opens a starter that has a fan, a spoke, an L and a box, and waits until all later parts have come. */
async function readyForArena(page: Page): Promise<void> {
  await opened(page);
  await openStarter(page, 'larkhollow-open');
  await expect(page.locator('[data-said]')).toContainText('Opened');
  await page.waitForLoadState('networkidle');
}

async function enter(page: Page): Promise<void> {
  await stage(page, 'Post').click();
  await page.getByRole('tab', { name: 'Set-out', exact: true }).click();
  await page.getByRole('button', { name: 'Set it out in the arena' }).click(PLANNED);
  await expect(companion(page)).toBeVisible();
}

async function goToPart(page: Page, title: RegExp): Promise<void> {
  await page.getByRole('button', { name: 'Parts', exact: true }).click();
  await companion(page).getByRole('listitem').getByRole('button', { name: title }).click();
  await expect(companion(page)).toHaveAccessibleName(title);
}

/** Goes through the part that is shown, act by act, with a look at each. */
async function throughPart(page: Page, look: () => Promise<void>): Promise<number> {
  const title = await companion(page).getByRole('heading', { level: 2 }).textContent();
  for (let acts = 0; ; acts += 1) {
    const isHere = (await companion(page).getByRole('heading', { level: 2 }).textContent()) === title;
    if (!isHere || acts > 60) return acts;
    await look();
    await page.getByRole('button', { name: 'Next', exact: true }).click();
  }
}

/** The text without the spaces that keep a length on one line. */
function plain(text: string | null): string {
  return (text ?? '').replaceAll(/\s/g, ' ');
}

test('a fan, a spoke, an L and a box are set out, ticked and read without a connection', async ({ page, context }) => {
  await page.setViewportSize(PHONE);
  await readyForArena(page);
  await context.setOffline(true);
  await enter(page);
  const missed: string[] = [];
  page.on('requestfailed', (request) => {
    // The browser itself asks for the page's icon anew with each address.
    if (request.resourceType() !== 'other') missed.push(request.url());
  });
  const figure = companion(page).locator('.setout-figure');

  for (const [title, steps] of [
    [/The fan/, 3],
    [/The spoke/, 5],
    [/The back-through L/, 4],
    [/The box/, 4],
  ] as const) {
    await test.step(`${title.source} is walked through`, async () => {
      await goToPart(page, title);
      const seen = new Set<string>();
      const acts = await throughPart(page, async () => {
        seen.add(plain(await companion(page).locator('.setout-titles p').textContent()).split(' · ')[0] ?? '');
        const [told, sentence] = [
          plain(await figure.textContent()),
          plain(await companion(page).locator('.setout-says').textContent()),
        ];
        // What the tape reads is in large figures and in the sentence, and a picture is beside it.
        if ((await figure.getAttribute('data-figure')) !== null) expect(sentence).toContain(told);
        await expect(companion(page).getByRole('img')).toHaveAccessibleName(/^Picture, facing north/);
        const [letters, others] = await companion(page).evaluate((dialog) => {
          const sizes = [...dialog.querySelectorAll('p, h2, h3, button, span, label')].map((each) =>
            Number.parseFloat(getComputedStyle(each).fontSize),
          );
          const own = dialog.querySelector('.setout-figure');
          return [own === null ? 0 : Number.parseFloat(getComputedStyle(own).fontSize), Math.max(...sizes)];
        });
        expect(letters).toBe(others);
        expect(await companion(page).evaluate((dialog) => dialog.scrollWidth - dialog.clientWidth)).toBe(0);
      });
      expect(seen.size).toBe(steps);
      expect(acts).toBeGreaterThan(3 * steps);
    });
  }

  await test.step('next and back are as high as a third of the screen, and at its lower edge', async () => {
    for (const name of ['Next', 'Back']) {
      const box = await companion(page).getByRole('button', { name, exact: true }).boundingBox();
      expect(box?.height).toBeGreaterThan(PHONE.height * 0.28);
      expect((box?.y ?? 0) + (box?.height ?? 0)).toBeGreaterThan(PHONE.height * 0.95);
    }
  });

  await test.step('the picture is turned by its button', async () => {
    await page.getByRole('button', { name: 'Turn the picture to the right' }).click();
    await expect(companion(page).getByRole('img')).toHaveAccessibleName(/^Picture, facing west/);
    await page.getByRole('button', { name: 'Turn the picture to the left' }).click();
  });

  await test.step('what is done is ticked', async () => {
    await goToPart(page, /The fan/);
    await companion(page).getByRole('checkbox', { name: 'Done' }).check();
    await page.getByRole('button', { name: 'Next', exact: true }).click();
    await companion(page).getByRole('checkbox', { name: 'Done' }).check();
    await expect(companion(page)).toContainText('2 of 16 done');
  });

  await test.step('a pole that lies wrong is read, and the move that mends it is told', async () => {
    await page.getByRole('button', { name: 'As built', exact: true }).click();
    const inner = page.getByRole('textbox', { name: /^Pole 2 to pole 3, inside to inside, at ends/ });
    const outer = page.getByRole('textbox', { name: /^Pole 2 to pole 3, inside to inside, 4/ });
    await inner.fill('a foot');
    await page.getByRole('button', { name: 'Work it out' }).click();
    await expect(inner).toHaveAttribute('aria-invalid', 'true');
    await expect(companion(page).getByRole('alert')).toContainText('Write');
    await inner.fill(`1' 11"`);
    await outer.fill(`6' 0"`);
    await page.getByRole('button', { name: 'Work it out' }).click();
    const moves = companion(page)
      .getByRole('listitem')
      .filter({ hasText: /^Move / });
    await expect(moves.first()).toContainText(/Move the inner end \(E\) of pole 3 of the fan .* in by/, PLANNED);
    await expect(companion(page)).toContainText('Gaps as built');
    await page.getByRole('button', { name: 'Keep as a layout of its own' }).click();
    await expect(companion(page)).toContainText(/Kept as “.*, as built”/);
  });

  expect(missed).toEqual([]);

  await test.step('a reload comes back to the same place, with the ticks and the readings', async () => {
    await context.setOffline(false);
    await expect(page.locator('.save-state')).toHaveText('Saved', { timeout: 30_000 });
    await page.reload();
    await expect(companion(page)).toHaveAccessibleName(/The fan/, PLANNED);
    await expect(companion(page)).toContainText('2 of 16 done');
    await expect(companion(page).getByRole('checkbox', { name: 'Done' })).toBeChecked();
    await page.getByRole('button', { name: 'As built', exact: true }).click();
    await expect(page.getByRole('textbox', { name: /^Pole 2 to pole 3, inside to inside, at ends/ })).toHaveValue(
      `1' 11"`,
    );
  });
});

test('keys alone set a course out', async ({ page }) => {
  await page.setViewportSize(DESKTOP);
  await readyForArena(page);
  await enter(page);
  const titles = companion(page).locator('.setout-titles p');
  await expect(page.getByRole('button', { name: 'Next', exact: true })).toBeFocused();
  const head = companion(page).getByRole('heading', { level: 3 });
  await expect(head).toHaveText('Tape 1 of 3');
  await page.keyboard.press('PageDown');
  await expect(head).toHaveText('Tape 2 of 3');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('PageUp');
  await expect(head).toHaveText('Tape 1 of 3');
  await page.keyboard.press('Enter');
  await expect(head).toHaveText('Tape 2 of 3');
  // The tick is two before Next.
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Shift+Tab');
  await expect(companion(page).getByRole('checkbox', { name: 'Done' })).toBeFocused();
  await page.keyboard.press('Space');
  await expect(titles).toContainText('1 of ');
  // Escape leaves the list of parts, then the companion, and the focus goes back to where it came from.
  await page.getByRole('button', { name: 'Parts', exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect(companion(page).getByRole('heading', { name: 'Parts, in walking order' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(head).toHaveText('Tape 2 of 3');
  await page.keyboard.press('Escape');
  await expect(companion(page)).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Set it out in the arena' })).toBeFocused();
  expect(new URL(page.url()).hash).toBe('');
});

test('the browser’s Back leaves the companion and not the app', async ({ page }) => {
  await page.setViewportSize(PHONE);
  await readyForArena(page);
  await enter(page);
  await page.goBack();
  await expect(companion(page)).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Set it out in the arena' })).toBeVisible();
});

test('it is read aloud on request, and the screen stays lit until it is left', async ({ page }) => {
  // No voice and no screen can be had here: what the page asks of them is written down.
  await page.addInitScript(() => {
    const asked: string[] = [];
    const voice = { speak: ({ text }: { text: string }) => asked.push(text), cancel: () => undefined };
    class Utterance {
      readonly text: string;
      constructor(text: string) {
        this.text = text;
      }
    }
    const lock = {
      request: (kind: string) => {
        asked.push(`lit: ${kind}`);
        return Promise.resolve({ release: () => Promise.resolve(asked.push('dark')) });
      },
    };
    Object.defineProperty(window, 'speechSynthesis', { value: voice });
    Object.defineProperty(window, 'SpeechSynthesisUtterance', { value: Utterance });
    Object.defineProperty(navigator, 'wakeLock', { value: lock });
    Object.assign(window, { asked });
  });
  const asked = () => page.evaluate(() => (window as unknown as { readonly asked: readonly string[] }).asked);
  await readyForArena(page);
  await enter(page);
  await goToPart(page, /The fan/);
  await page.getByRole('button', { name: 'Aloud', exact: true }).click();
  await page.getByRole('button', { name: 'Next', exact: true }).click();
  await expect.poll(asked).toHaveLength(3);
  const [lit, first, second] = await asked();
  expect(lit).toBe('lit: screen');
  expect(first).toMatch(/^Lay pole 1 \(12 feet, ends A and B\)\. Tape \d+ feet/);
  expect(second).toMatch(/^Tape \d+ feet .* inches from/);
  await page.getByRole('button', { name: 'Leave the set-out' }).click();
  await expect.poll(async () => (await asked()).at(-1)).toBe('dark');
});

test('where the browser has no voice, nothing offers to read aloud', async ({ page }) => {
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, 'speechSynthesis');
    Reflect.deleteProperty(Window.prototype, 'speechSynthesis');
  });
  await readyForArena(page);
  await enter(page);
  await expect(page.getByRole('button', { name: 'Parts', exact: true })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Aloud', exact: true })).toHaveCount(0);
});

test('parts are shared by a link, which says so where the course is not kept', async ({ page, browser, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.setViewportSize(PHONE);
  await readyForArena(page);
  await stage(page, 'Post').click();
  await page.getByRole('tab', { name: 'Set-out', exact: true }).click();
  // A starter that nobody has changed is not kept; who sets it out is not part of the drawing.
  await page.getByLabel('Tapes', { exact: true }).selectOption('Two');
  await page.getByRole('button', { name: 'Set it out in the arena' }).click(PLANNED);
  await page.getByRole('button', { name: 'Parts', exact: true }).click();
  await page.getByRole('button', { name: 'Share these parts' }).click();
  await expect(companion(page)).toContainText('Choose at least one part.');
  await page.getByRole('checkbox', { name: /^Share The fan/ }).check();
  await page.getByRole('checkbox', { name: /^Share The box/ }).check();
  await page.getByRole('button', { name: 'Share these parts' }).click();
  const link = await page.getByRole('textbox', { name: 'The link' }).inputValue();
  expect(link).toMatch(/#set-out=[a-z0-9]+\./);

  await test.step('on this device only these parts are shown, also where another course is open', async () => {
    await page.goto(link);
    await expect(companion(page)).toHaveAccessibleName(/^Part 1 of 2/, PLANNED);
    await page.getByRole('button', { name: 'Leave the set-out' }).click();
    await expect(page.locator('.save-state')).toHaveText('Saved');
    await openStarter(page, 'practice-with-faults');
    await expect(page.locator('.course-title')).not.toHaveText('Sunday open trail');
    await page.goto(link);
    const asks = page.getByRole('dialog', { name: 'Set-out in the arena' });
    await expect(asks).toContainText('“Sunday open trail”');
    await asks.getByRole('button', { name: 'Open it' }).click();
    await expect(companion(page)).toHaveAccessibleName(/^Part 1 of 2/, PLANNED);
  });

  await test.step('on another device it says that the course is not there', async () => {
    const other = await browser.newContext({ viewport: PHONE });
    const there = await other.newPage();
    await there.goto(link);
    await expect(there.getByRole('dialog', { name: 'Set-out in the arena' })).toContainText('is not on this device');
    await other.close();
  });
});

test('nothing of the companion has a fault of access, in any look', async ({ page }) => {
  await page.setViewportSize(PHONE);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await readyForArena(page);
  await enter(page);
  await goToPart(page, /The fan/);
  for (const [size, system] of [
    [PHONE, 'light'],
    [DESKTOP, 'light'],
    [SIDEWAYS, 'dark'],
  ] as const) {
    await page.setViewportSize(size);
    await page.emulateMedia({ reducedMotion: 'reduce', colorScheme: system });
    for (const look of ['Usual', 'Sun', 'Dark']) {
      await expect(page.getByRole('button', { name: `Look: ${look}` })).toBeVisible();
      for (const view of ['Steps', 'Parts', 'As built']) {
        if (view !== 'Steps') await page.getByRole('button', { name: view, exact: true }).click();
        // Another look changes colours only.
        const asked = look === 'Usual' ? axe(page) : axe(page).withRules(['color-contrast']);
        const { violations } = await asked.include('.companion').analyze();
        const told = violations.map(({ id, nodes }) => `${id} ${nodes.map((node) => node.target).join(' | ')}`);
        expect(told, `${size.width} x ${size.height}, ${look}, ${view}`).toEqual([]);
        if (view !== 'Steps') await page.getByRole('button', { name: view, exact: true }).click();
      }
      const small = await companion(page).evaluate(
        (dialog) =>
          [...dialog.querySelectorAll('button, input')]
            .map((each) => each.getBoundingClientRect())
            .filter(({ width, height }) => Math.min(width, height) < 44).length,
      );
      expect(small).toBe(0);
      await page.getByRole('button', { name: `Look: ${look}` }).click();
    }
  }
});
