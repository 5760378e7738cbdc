import type { Desk, DeskState } from '../desk/desk.ts';

/** When the page hears of a change at the desk; times in milliseconds. */
export interface Pace {
  /** How long the desk must lie still before a change at rest is shown; 0: at once. */
  readonly atRest: number;
  /**
   * While something is dragged: how long the hand must rest before the page follows, and how long it waits at least
   * before it follows a hand that does not rest, when the browser has time for it. Null: it waits for the end.
   */
  readonly inGesture: { readonly still: number; readonly least: number } | null;
}

export const PACES = {
  /** What stands around the arena: a drag does not wait for it, and at the end it is true at once. */
  following: { atRest: 0, inGesture: { still: 200, least: 1000 } },
  /** What is worked out at rest only. */
  resting: { atRest: 0, inGesture: null },
  /** What takes longer than a frame to work out. */
  settled: { atRest: 250, inGesture: null },
} as const satisfies Readonly<Record<string, Pace>>;

/** The desk's state as some of the page sees it: always one that the desk was in, and the desk's own at rest. */
export interface PacedDesk {
  state(): DeskState;
  subscribe(listener: () => void): () => void;
}

/**
 * Runs once the browser has nothing to do for as long as is needed, milliseconds, and answers how to call it off. A browser
 * that cannot tell never runs it.
 */
export type IdleTime = (run: () => void, needed: number) => () => void;

const browserIdle: IdleTime = (run, needed) => {
  if (typeof globalThis.requestIdleCallback !== 'function') return () => undefined;
  let handle = 0;
  // Between two moves of a hand there is often a moment, but seldom enough of it: what does not fit would hold up the next move.
  const ask = (): void => {
    handle = requestIdleCallback((deadline) => (deadline.timeRemaining() >= needed ? run() : ask()));
  };
  ask();
  return () => cancelIdleCallback(handle);
};

export function pacedDesk(
  desk: Pick<Desk, 'state' | 'subscribe'>,
  pace: Pace,
  whenIdle: IdleTime = browserIdle,
): PacedDesk {
  const listeners = new Set<() => void>();
  let shown = desk.state();
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** When the first change came that is not shown yet, in the page's time. */
  let waitsSince: number | null = null;
  let callOff: (() => void) | null = null;
  /** How long the page took when it last followed a gesture or its end, milliseconds. Until that is known it takes too long. */
  let took = Number.POSITIVE_INFINITY;
  let stop = (): void => undefined;

  const forget = (): void => {
    clearTimeout(timer);
    callOff?.();
    callOff = null;
    waitsSince = null;
  };
  const show = (): void => {
    const follows = waitsSince !== null;
    forget();
    shown = desk.state();
    const begun = performance.now();
    for (const listener of [...listeners]) listener();
    // React renders in a microtask of its own, which the listeners have asked for.
    if (!follows) return;
    queueMicrotask(() => {
      took = performance.now() - begun;
    });
  };
  const changed = (): void => {
    clearTimeout(timer);
    const isAtRest = desk.state().gesture === null;
    if (isAtRest && pace.atRest === 0) show();
    else if (isAtRest) timer = setTimeout(show, pace.atRest);
    else if (pace.inGesture !== null) {
      const now = performance.now();
      waitsSince ??= now;
      timer = setTimeout(show, pace.inGesture.still);
      if (now - waitsSince >= pace.inGesture.least) callOff ??= whenIdle(show, took);
    }
  };
  return {
    state() {
      // Nobody listens: there was nothing to pace.
      if (listeners.size === 0 && desk.state().gesture === null) shown = desk.state();
      return shown;
    },
    subscribe(listener) {
      if (listeners.size === 0) stop = desk.subscribe(changed);
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
        if (listeners.size > 0) return;
        stop();
        forget();
      };
    },
  };
}
