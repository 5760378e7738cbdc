import { createStore } from 'zustand/vanilla';
import type { Seconds } from '../../core/measure/quantity.ts';

/** How fast the ride is played: 1 is true to life. */
export const RATES = [1, 2, 4] as const;
type Rate = (typeof RATES)[number];

/** What can be played: how long it takes, and the moments at which one stops when going step by step, in order. */
export interface Timeline {
  readonly duration: Seconds;
  readonly cuePoints: readonly Seconds[];
}

/** What changes seldom. The time itself goes to watchers, frame by frame. */
export interface PlayerState {
  readonly isPlaying: boolean;
  readonly rate: Rate;
  /** Whether the hoof prints are shown. */
  readonly hasPrints: boolean;
  /** Rises with each step that a person takes: what the horse does there is announced. */
  readonly steps: number;
}

/** Plays the go. It draws nothing: watchers do. */
export interface Player {
  state(): PlayerState;
  subscribe(listener: () => void): () => void;
  /** Seconds from the start of the go. */
  time(): Seconds;
  /** Calls back with the time whenever it has changed; returns how to stop. */
  watch(seen: (time: Seconds) => void): () => void;
  load(score: Timeline): void;
  play(): void;
  pause(): void;
  seek(time: Seconds): void;
  /** To the next stop, or the one before; pauses. */
  step(by: 1 | -1): void;
  run(rate: Rate): void;
  showPrints(shown: boolean): void;
}

/** Where the player gets its frames. It plays when it is asked to, for people too who want nothing to move by itself. */
export interface FrameSource {
  next(frame: (ms: number) => void): void;
}

/** Two moments nearer than this are one. */
const MOMENT: Seconds = 1e-6;
/** A longer frame was a pause of the page, milliseconds. */
const LONGEST = 250;

export function createPlayer(frames: FrameSource): Player {
  const store = createStore<PlayerState>()(() => ({ isPlaying: false, rate: 1, hasPrints: false, steps: 0 }));
  const { getState: state, setState: change } = store;
  let timeline: Timeline = { duration: 0, cuePoints: [] };
  let time: Seconds = 0;
  let last: number | null = null;
  const watchers = new Set<(time: Seconds) => void>();

  const place = (wanted: Seconds): void => {
    const next = Math.min(timeline.duration, Math.max(0, wanted));
    if (next === time) return;
    time = next;
    for (const seen of [...watchers]) seen(next);
  };
  const frame = (ms: number): void => {
    if (!state().isPlaying) return;
    const gone = last === null ? 0 : Math.min(LONGEST, ms - last);
    last = ms;
    place(time + (gone / 1000) * state().rate);
    if (time >= timeline.duration) change({ isPlaying: false });
    else frames.next(frame);
  };
  const pause = (): void => {
    if (state().isPlaying) change({ isPlaying: false });
  };

  return {
    state,
    subscribe: (listener) => store.subscribe(() => listener()),
    time: () => time,
    watch(seen) {
      watchers.add(seen);
      return () => watchers.delete(seen);
    },
    load(next) {
      timeline = next;
      place(time);
    },
    play() {
      if (state().isPlaying || timeline.duration <= 0) return;
      if (time >= timeline.duration) place(0);
      last = null;
      change({ isPlaying: true });
      frames.next(frame);
    },
    pause,
    seek: place,
    step(by) {
      pause();
      const { cuePoints } = timeline;
      const next =
        by === 1 ? cuePoints.find((stop) => stop > time + MOMENT) : cuePoints.findLast((stop) => stop < time - MOMENT);
      place(next ?? (by === 1 ? timeline.duration : 0));
      change({ steps: state().steps + 1 });
    },
    run: (rate) => change({ rate }),
    showPrints: (hasPrints) => change({ hasPrints }),
  };
}
