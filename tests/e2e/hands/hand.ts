/** hands/ are the ways to work the page: by mouse, by touch, by keys. A test that is written for a hand is done by each of them. */
import { expect, type Locator, type Page } from '@playwright/test';
import type { Place } from '../arena.ts';

/** What a person does at the page, whatever with. */
export interface Hand {
  press(control: Locator): Promise<void>;
  /** Opens one of the five stages. */
  goTo(stage: string): Promise<void>;
  /** Types into a field in the place of what is in it; `send` ends with Enter. */
  type(field: Locator, text: string, send?: 'send'): Promise<void>;
  /** Chooses in a list of the browser. */
  pick(list: Locator, value: string): Promise<void>;
  /**
   * Adds an obstacle from the list of what to add: its kind, the words by which it is found, and where a hand that carries
   * puts it. Without a place it is put on free ground, and by keys always.
   */
  add(kind: string, words: string, at?: Place): Promise<void>;
  /** Chooses an obstacle in the arena, then the one of its poles that lies at a place. */
  choosePole(obstacle: string, pole: Place): Promise<void>;
  /** Opens the number of a tape in the arena as a field. */
  openTape(tape: Locator): Promise<void>;
  /** Moves an obstacle about so far, metres. */
  move(obstacle: string, by: Place): Promise<void>;
}

export type MakeHand = (page: Page) => Promise<Hand>;

/** Where there is room for one panel at a time, it is a tab. */
export async function showPanel(hand: Hand, page: Page, name: string): Promise<void> {
  const tab = page.getByRole('tablist', { name: 'Panels' }).getByRole('tab', { name, exact: true });
  if ((await tab.count()) > 0) await hand.press(tab);
}

/** The list of the operating system is out of the page and of reach: the field must be, and its answer is given. */
export async function pickReached(list: Locator, value: string, reach: () => Promise<void>): Promise<void> {
  await reach();
  await list.selectOption(value);
  await expect(list).toHaveValue(value);
}

/** Writes down which pointers go down and which keys, and in what. */
export async function watchInput(page: Page): Promise<() => Promise<{ pointers: string[]; keys: string[] }>> {
  await page.addInitScript(() => {
    const pointers = new Set<string>();
    const keys = new Set<string>();
    Object.assign(window, { input: () => ({ pointers: [...pointers], keys: [...keys] }) });
    window.addEventListener('pointerdown', ({ pointerType }) => pointers.add(pointerType), true);
    window.addEventListener(
      'keydown',
      ({ target }) => {
        const isText = target instanceof HTMLElement && target.matches('input[type="text"], input[type="search"]');
        keys.add(isText ? 'in a field' : 'elsewhere');
      },
      true,
    );
  });
  return () => page.evaluate(() => (window as unknown as { input(): { pointers: string[]; keys: string[] } }).input());
}
