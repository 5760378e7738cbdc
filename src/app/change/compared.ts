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
  /** Where the change-over starts: a layout's id, `EMPTY_ARENA`, or null for what is compared. */
  readonly planFrom: string | null;
  /** The number of the carry that is pointed at in the list. */
  readonly focusedCarry: number | null;
  /** Ids of the measures that the table leaves out. */
  readonly leftOut: readonly string[];
}

/** Stands for the arena with nothing in it; ids of layouts are never empty. */
export const EMPTY_ARENA = '';

/**
 * The layout from which the change-over to the shown one starts: the chosen one, else the one that is compared, else any
 * other; null: from the empty arena.
 */
export function planStart(
  { layouts, current }: Course,
  { planFrom, compared }: Pick<ComparedState, 'planFrom' | 'compared'>,
): string | null {
  if (planFrom === EMPTY_ARENA) return null;
  const others = layouts.filter(({ id }) => id !== current);
  const wanted = [planFrom, ...compared].flatMap((id) => others.filter((layout) => layout.id === id));
  return (wanted[0] ?? others[0])?.id ?? null;
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
  startPlanFrom(layout: string): void;
  focusCarry(number: number | null): void;
  /** Leaves a measure out of the table, or takes it in again. */
  toggleMeasure(id: string): void;
}

export function createCompared(): Compared {
  const store = createStore<ComparedState>()(() => ({
    compared: [],
    mode: 'ghost',
    focused: null,
    showsPlan: false,
    planFrom: null,
    focusedCarry: null,
    leftOut: [],
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
    startPlanFrom: (planFrom) => change({ planFrom }),
    focusCarry(focusedCarry) {
      if (focusedCarry !== state().focusedCarry) change({ focusedCarry });
    },
    toggleMeasure(id) {
      const { leftOut } = state();
      change({ leftOut: leftOut.includes(id) ? leftOut.filter((each) => each !== id) : [...leftOut, id] });
    },
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
