/** What axe finds on a page in use, in light and in dark. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/**
 * Axe, to be told what to look at. Legacy mode: the page has no frames, so that no second page has to put their parts together.
 * Only what is wrong is described: to name all that is right takes longer than to look at it.
 */
export function axe(page: Page): AxeBuilder {
  const builder = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });
  const analyze = builder.analyze.bind(builder);
  builder.analyze = async () => {
    await showDialogAlone(page, 'hidden');
    const results = await analyze();
    await showDialogAlone(page, '');
    return results;
  };
  return builder;
}

/** Axe does not know that an open dialog lies over the page: what is below would hide the dialog's colours from it. */
async function showDialogAlone(page: Page, below: 'hidden' | ''): Promise<void> {
  await page.evaluate((visibility) => {
    const dialog = [...document.querySelectorAll<HTMLElement>('dialog[open]')].at(-1);
    if (dialog === undefined) return;
    // Inherited: what is below is hidden with the body, and what is in the dialog is shown with it.
    document.body.style.visibility = visibility;
    dialog.style.visibility = visibility === '' ? '' : 'visible';
  }, below);
}

/**
 * The faults on the page as it is now, each once; `include` names the part that is asked. In dark only the colours can differ,
 * and only they are asked again.
 */
export async function faultsInUse(page: Page, where: string, include = 'body'): Promise<readonly string[]> {
  const found: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    const builder = axe(page).include(include);
    const { violations } = await (colorScheme === 'dark' ? builder.withRules(['color-contrast']) : builder).analyze();
    const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
    found.push(
      ...grave.map(
        ({ id, nodes }) => `${where}, ${colorScheme}: ${id} ${nodes.map(({ target }) => target).join(' | ')}`,
      ),
    );
  }
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: null });
  return found;
}
