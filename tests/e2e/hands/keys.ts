/** The hand on the keyboard alone: it goes to everything by the keys that lead there. */
import { expect, type Locator, type Page } from '@playwright/test';
import { arena, placeOf, stage } from '../arena.ts';
import { type Hand, showPanel } from './hand.ts';

/** More keys than any control is away. */
const FAR = 120;
/** What one arrow with shift moves, metres. */
const FOOT = 0.3048;

/** The key that leads nearer to a control from where the focus is; nothing when it is there. */
function keyTowards(control: Locator): Promise<string | undefined> {
  return control.evaluate((element) => {
    const here = document.activeElement ?? document.body;
    if (here === element) return undefined;
    const pane = element.closest('dialog, [popover], [data-pane]');
    if (pane !== null && !pane.contains(here)) return pane.matches('[data-pane]') ? 'F6' : 'Tab';
    const isAfter = (here.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
    // Tabs are one stop, and arrows go along them.
    const tabs = element.closest('[role="tablist"]');
    if (tabs?.contains(here)) return isAfter ? 'ArrowRight' : 'ArrowLeft';
    return isAfter ? 'Tab' : 'Shift+Tab';
  });
}

export async function keys(page: Page): Promise<Hand> {
  const { keyboard } = page;
  const reach = async (control: Locator) => {
    for (let step = 0; step < FAR; step += 1) {
      const key = await keyTowards(control);
      if (key === undefined) return;
      await keyboard.press(key);
    }
    throw new Error(`no keys lead to ${control}`);
  };
  const chosen = async (obstacle: string) => {
    await reach(arena(page));
    const row = page.locator(`[data-obstacle="${obstacle}"]`);
    for (let step = 0; step < FAR; step += 1) {
      if ((await row.textContent())?.startsWith('Chosen')) return;
      await keyboard.press('Tab');
    }
    throw new Error(`no keys lead to ${obstacle}`);
  };
  const hand: Hand = {
    async press(control) {
      await reach(control);
      // A tab is chosen when arrows come to it.
      const isDone = (await control.getAttribute('aria-selected')) === 'true';
      if (!isDone) await keyboard.press('Enter');
    },
    async goTo(name) {
      await reach(page.locator('[data-pane="arena"]'));
      await keyboard.press(String(['Set', 'Ride', 'Check', 'Post', 'Change'].indexOf(name) + 1));
      await expect(stage(page, name)).toHaveAttribute('aria-selected', 'true');
    },
    async type(field, text, send) {
      await reach(field);
      await keyboard.press('Control+a');
      await keyboard.type(text);
      if (send !== undefined) await keyboard.press('Enter');
    },
    async pick(list, value) {
      await reach(list);
      const by = await list.evaluate(
        (element: HTMLSelectElement, to) =>
          [...element.options].findIndex((option) => option.value === to) - element.selectedIndex,
        value,
      );
      for (let step = 0; step < Math.abs(by); step += 1) await keyboard.press(by > 0 ? 'ArrowDown' : 'ArrowUp');
      await expect(list).toHaveValue(value);
    },
    async add(_kind, words) {
      await showPanel(hand, page, 'Add');
      await hand.type(page.getByRole('searchbox', { name: 'Find an obstacle' }), words, 'send');
    },
    async choosePole(obstacle) {
      await chosen(obstacle);
      await keyboard.press('Enter');
    },
    async openTape(tape) {
      await reach(arena(page));
      await keyboard.press('g');
      await hand.press(tape);
    },
    async move(obstacle, by) {
      await chosen(obstacle);
      const from = await placeOf(page, obstacle);
      // Arrows go as the arena is seen; where it is turned, its long side goes up the page.
      const isTurned = (await arena(page).getAttribute('data-turned')) === 'true';
      const [right, up] = isTurned ? [-by.y, by.x] : [by.x, by.y];
      for (const [far, more, less] of [
        [right, 'ArrowRight', 'ArrowLeft'],
        [up, 'ArrowUp', 'ArrowDown'],
      ] as const) {
        const feet = Math.round(Math.abs(far) / FOOT);
        for (let foot = 0; foot < feet; foot += 1) await keyboard.press(`Shift+${far > 0 ? more : less}`);
      }
      expect(await placeOf(page, obstacle)).not.toEqual(from);
    },
  };
  return hand;
}
