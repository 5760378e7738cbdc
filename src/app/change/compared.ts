import { createContext, useContext, useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import type { Course, Layout } from '../../core/course/course.ts';

/** More than two beside the shown one cannot be told apart. */
export const MOST_COMPARED = 2;

export type CompareMode = 'ghost' | 'side-by-side';

export interface ComparedState {
  /** Ids of the layouts that the shown one is compared with, at most two; one that is shown or gone counts as none. */
  readonly compared: readonly string[];
  /** The other layouts lie under the shown one as outlines, or beside it as drawings. */
  readonly mode: CompareMode;
  /** Key of the obstacle or piece of the shown layout whose origin is shown: `fan-1`, `fan-1/pole-2`. */
  readonly focused: string | null;
  /** Whether the arena shows the change-over from the first compared layout to the shown one. */
  readonly showsPlan: boolean;
}

/** What the stage Change compares, and how: nothing here belongs to the course. */
export interface Compared {
  state(): ComparedState;
  subscribe(listener: () => void): () => void;
  /** Compares with these layouts, by id; the first two of more. */
  compare(layouts: readonly string[]): void;
  /** Call when another layout is shown: one that was compared with changes places with the one shown before. */
  swap(shown: string, next: string): void;
  setMode(mode: CompareMode): void;
  focus(key: string | null): void;
  showPlan(shows: boolean): void;
}

export function createCompared(): Compared {
  const store = createStore<ComparedState>()(() => ({
    compared: [],
    mode: 'ghost',
    focused: null,
    showsPlan: false,
  }));
  const { getState: state, setState: change } = store;
  return {
    state,
    subscribe: (listener) => store.subscribe(() => listener()),
    compare(layouts) {
      change({ compared: [...new Set(layouts)].slice(0, MOST_COMPARED) });
    },
    swap(shown, next) {
      const { compared } = state();
      if (!compared.includes(next)) return;
      change({ compared: compared.map((id) => (id === next ? shown : id)), focused: null });
    },
    setMode: (mode) => change({ mode }),
    focus(focused) {
      if (focused !== state().focused) change({ focused });
    },
    showPlan: (showsPlan) => change({ showsPlan }),
  };
}

/** The layouts that the shown one is compared with, in the order they were chosen. */
export function comparedLayouts(course: Course, { compared }: Pick<ComparedState, 'compared'>): readonly Layout[] {
  return compared.flatMap((id) => course.layouts.filter((layout) => layout.id === id && id !== course.current));
}

export const ComparedContext = createContext<Compared | null>(null);

export function useCompared(): Compared {
  const compared = useContext(ComparedContext);
  if (compared === null) throw new Error('useCompared: there is no ComparedContext above');
  return compared;
}

export function useComparedState<Part>(pick: (state: ComparedState) => Part): Part {
  const compared = useCompared();
  return useSyncExternalStore(compared.subscribe, () => pick(compared.state()));
}
