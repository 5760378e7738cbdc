/** The part of the browser's lock manager that is used here: Web Locks are held until the promise settles. */
export interface Locks {
  request(
    name: string,
    options: { readonly ifAvailable: true },
    hold: (lock: unknown) => Promise<void> | undefined,
  ): Promise<unknown>;
}

/** Whether this tab is the one that edits a slot. `unguarded`: the browser cannot tell. */
export type Claim =
  | { readonly kind: 'held'; release(): void }
  | { readonly kind: 'elsewhere'; readonly says: string }
  | { readonly kind: 'unguarded' };

const ELSEWHERE =
  'This course is open in another tab. Edit it there, or close that tab and reload this one: two tabs would overwrite each other.';

/** The browser's lock manager, where there is one. */
function pageLocks(): Locks | undefined {
  // Not in every browser, whatever the types say.
  return typeof navigator === 'undefined' ? undefined : (navigator.locks as Locks | undefined);
}

/** Claims a slot for this tab, until released or the tab is closed. Never rejects. */
export async function claimed(slot: string, locks: Locks | undefined = pageLocks()): Promise<Claim> {
  if (locks === undefined) return { kind: 'unguarded' };
  return new Promise((resolve) => {
    const asked = locks.request(`polewright-${slot}`, { ifAvailable: true }, (lock) => {
      if (lock === null) {
        resolve({ kind: 'elsewhere', says: ELSEWHERE });
        return undefined;
      }
      return new Promise<void>((release) => resolve({ kind: 'held', release }));
    });
    asked.catch(() => resolve({ kind: 'unguarded' }));
  });
}
