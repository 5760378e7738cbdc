/** What of the first visit is behind a person in this browser. */
export interface FirstVisit {
  /** How many hints were put away. */
  readonly hints: number;
  /** Whether the example has moved, or was passed over. */
  readonly example: boolean;
}

export const FIRST_VISIT_KEY = 'polewright-first-visit';

/** Nothing seen yet. */
export const NEW_HERE: FirstVisit = { hints: 0, example: false };
/** Taken where nothing can be stored, so that nobody is told the same at every visit. */
const KNOWS_ALL: FirstVisit = { hints: Number.MAX_SAFE_INTEGER, example: true };

/** What this browser remembers; null at a first visit. */
export function readFirstVisit(storage: () => Pick<Storage, 'getItem'> = () => localStorage): FirstVisit | null {
  try {
    const text = storage().getItem(FIRST_VISIT_KEY);
    if (text === null) return null;
    const { hints, example } = JSON.parse(text) as Partial<Record<keyof FirstVisit, unknown>>;
    return typeof hints === 'number' && typeof example === 'boolean' ? { hints, example } : KNOWS_ALL;
  } catch {
    return KNOWS_ALL;
  }
}

/** Remembers it; a browser that stores nothing shows the hints until the page closes. */
export function writeFirstVisit(visit: FirstVisit, storage: () => Pick<Storage, 'setItem'> = () => localStorage): void {
  try {
    storage().setItem(FIRST_VISIT_KEY, JSON.stringify(visit));
  } catch {
    // Full or forbidden.
  }
}
