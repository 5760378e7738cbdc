/** The part of the browser's lock manager that is used here: Web Locks are held until the promise settles. */
export interface LockRequests {
  request(
    name: string,
    options: { readonly ifAvailable: true },
    hold: (lock: unknown) => Promise<void> | undefined,
  ): Promise<unknown>;
}

/** Whether this tab is the one that edits a slot. `unsupported`: the browser cannot tell. */
export type LockResult =
  | { readonly kind: 'acquired'; release(): void }
  | { readonly kind: 'in-other-tab'; readonly says: string }
  | { readonly kind: 'unsupported' };

const ELSEWHERE =
  'This course is open in another tab. Edit it there, or close that tab and reload this one: two tabs would overwrite each other.';

/** The browser's lock manager, where there is one. */
function browserLocks(): LockRequests | undefined {
  // Not in every browser, whatever the types say.
  return typeof navigator === 'undefined' ? undefined : (navigator.locks as LockRequests | undefined);
}

/** Claims a slot for this tab, until released or the tab is closed. Never rejects. */
export async function acquireLock(slot: string, locks: LockRequests | undefined = browserLocks()): Promise<LockResult> {
  if (locks === undefined) return { kind: 'unsupported' };
  return new Promise((resolve) => {
    const asked = locks.request(`polewright-${slot}`, { ifAvailable: true }, (lock) => {
      if (lock === null) {
        resolve({ kind: 'in-other-tab', says: ELSEWHERE });
        return undefined;
      }
      return new Promise<void>((release) => resolve({ kind: 'acquired', release }));
    });
    asked.catch(() => resolve({ kind: 'unsupported' }));
  });
}
