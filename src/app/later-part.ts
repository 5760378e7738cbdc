/** Parts of the program that are not in the first load: the arena can be used before they come. */

/** A part of the program that comes after the first picture. */
export interface LaterPart<Part> {
  /** Undefined for as long as it has not come. */
  now(): Part | undefined;
  /** Whether the last attempt to fetch it failed. */
  hasFailed(): boolean;
  /** Fetches it, once; after a failure anew. */
  load(): Promise<Part>;
  /** Calls back when it has come or could not; returns how to unsubscribe. */
  subscribe(listener: () => void): () => void;
}

/** The parts of a page. */
interface LaterParts {
  /** Called at the top of a file, once for each part. `fetch` is a dynamic import. */
  laterPart<Part>(fetch: () => Promise<Part>): LaterPart<Part>;
  /** Fetches a part that is to be shown: at once, or with the first ones after the first picture. */
  want(part: LaterPart<unknown>): void;
  /** To be called with the first picture: fetches what the page shows already, then all other parts when it is at rest. */
  fetchLaterParts(): void;
}

/** How long after a failure a part is fetched anew: twice as long each time, up to the longest. Milliseconds. */
const [FIRST_RETRY, LONGEST_RETRY] = [2000, 60_000];

/** A part whose fetching is an import. */
function partOf<Part>(fetch: () => Promise<Part>): LaterPart<Part> {
  const listeners = new Set<() => void>();
  let come: Part | undefined;
  let pending: Promise<Part> | undefined;
  let hasFailed = false;
  const tellAll = () => {
    for (const listener of [...listeners]) listener();
  };
  return {
    now: () => come,
    hasFailed: () => hasFailed,
    load() {
      pending ??= fetch().then(
        (fetched) => {
          [come, hasFailed] = [fetched, false];
          tellAll();
          return fetched;
        },
        (failure: unknown) => {
          [pending, hasFailed] = [undefined, true];
          tellAll();
          throw failure;
        },
      );
      return pending;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** Loads a part until it has come. A failure is in the part. */
async function insist(part: LaterPart<unknown>, retry = FIRST_RETRY): Promise<void> {
  try {
    await part.load();
  } catch {
    setTimeout(() => void insist(part, Math.min(2 * retry, LONGEST_RETRY)), retry);
  }
}

/** Exported for tests; a page has one. */
export function laterParts(): LaterParts {
  const parts: LaterPart<unknown>[] = [];
  const wanted = new Set<LaterPart<unknown>>();
  let isPainted = false;

  async function fetchAll(): Promise<void> {
    isPainted = true;
    await Promise.all([...wanted].map((part) => insist(part)));
    // Not every browser reports when it is at rest.
    const atRest = globalThis.requestIdleCallback ?? ((run: () => void) => setTimeout(run, 200));
    atRest(() => {
      for (const part of parts) if (part.now() === undefined && !part.hasFailed()) void insist(part);
    });
  }

  return {
    laterPart(fetch) {
      const part = partOf(fetch);
      parts.push(part);
      return part;
    },
    want(part) {
      if (isPainted) part.load().catch(() => undefined);
      else wanted.add(part);
    },
    fetchLaterParts() {
      // The picture is drawn in the next frame; the task after it comes when that is on the screen.
      if (!isPainted) requestAnimationFrame(() => setTimeout(fetchAll));
    },
  };
}

export const { laterPart, want, fetchLaterParts } = laterParts();
