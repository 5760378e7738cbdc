import { createContext, useContext, useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import type { Arena } from '../core/course/course.ts';
import type { Point } from '../core/plane/point.ts';
import type { Stage } from '../desk/input.ts';
import {
  type Camera,
  centreCamera,
  fitCamera,
  panCamera,
  type ScreenSize,
  screenOf,
  zoomCamera,
} from './arena/camera.ts';
import type { Grouping } from './check/groups.ts';

/** What a person points at, in the arena or on the strip, so that the other one can show it too. */
export type Pointed =
  | { readonly kind: 'leg'; readonly leg: number }
  | { readonly kind: 'gap'; readonly gap: number }
  | { readonly kind: 'finding'; readonly id: string }
  | null;

/** A place on the motion of a sweep, by its index. */
export interface SweepStep {
  readonly obstacle: string;
  readonly step: number;
}

export interface ViewState {
  readonly camera: Camera;
  readonly size: ScreenSize;
  readonly pointed: Pointed;
  /** How the findings are put together at Check. */
  readonly grouping: Grouping;
  /** The finding whose card is open at Check; null: none; undefined: nobody has chosen, and the first one is open. */
  readonly openFinding: string | null | undefined;
  /** The finding whose card takes the focus as soon as it is on the page. */
  readonly soughtFinding: string | null;
  /** The stage from which a badge led to Check; null: none did. */
  readonly cameFrom: Stage | null;
  /** What the view has to say to a person who does not see it. */
  readonly told: string;
  /** Where on its way through an obstacle a backing horse is shown at Check; null: not shown. */
  readonly sweepStep: SweepStep | null;
  /** Whether the nudge pad is wanted; null: where a finger has something chosen. */
  readonly pad: boolean | null;
}

/** How the course is viewed: nothing here belongs to the course. */
export interface View {
  state(): ViewState;
  subscribe(listener: () => void): () => void;
  /** The arena's place on the screen became known or changed. Fits until somebody moves the camera. */
  measure(size: ScreenSize, arena: Arena): void;
  fit(): void;
  zoom(factor: number, about?: Point<'screen'>): void;
  pan(dx: number, dy: number): void;
  /** Brings a place on the ground to the middle. */
  show(at: Point): void;
  /** Brings a place to the middle where it is not seen, or only at the edge. */
  reveal(at: Point): void;
  point(pointed: Pointed): void;
  /** Opens the card of a finding, or shuts the one that is open. `seek`: the card takes the focus. */
  openFinding(id: string | null, how?: 'seek'): void;
  /** The card that was sought has the focus. */
  foundFinding(): void;
  comeFrom(stage: Stage | null): void;
  tell(sentence: string): void;
  showSweepStep(step: SweepStep | null): void;
  group(grouping: Grouping): void;
  showPad(isShown: boolean): void;
}

/** What is nearer to the edge of the screen is hardly seen, pixels. */
const EDGE = 48;
const NO_SIZE: ScreenSize = { width: 0, height: 0 };

export function createView(arena: Arena): View {
  let ground = arena;
  let moved = false;
  const store = createStore<ViewState>()(() => ({
    camera: fitCamera(arena, NO_SIZE),
    size: NO_SIZE,
    pointed: null,
    grouping: 'obstacle',
    openFinding: undefined,
    soughtFinding: null,
    cameFrom: null,
    told: '',
    sweepStep: null,
    pad: null,
  }));
  const { getState: state, setState: change } = store;
  const moveCamera = (camera: Camera) => {
    moved = true;
    change({ camera });
  };
  return {
    state,
    subscribe: (listener) => store.subscribe(() => listener()),
    measure(size, now) {
      const sameGround = now.length === ground.length && now.width === ground.width;
      if (sameGround && size.width === state().size.width && size.height === state().size.height) return;
      ground = now;
      const turns = fitCamera(now, size).turned !== state().camera.turned;
      if (!sameGround || turns) moved = false;
      change({ size, camera: moved ? state().camera : fitCamera(now, size) });
    },
    fit() {
      moved = false;
      change({ camera: fitCamera(ground, state().size) });
    },
    zoom(factor, about) {
      const { camera, size } = state();
      moveCamera(zoomCamera(camera, factor, about ?? { x: size.width / 2, y: size.height / 2 }));
    },
    pan(dx, dy) {
      moveCamera(panCamera(state().camera, dx, dy));
    },
    show(at) {
      moveCamera(centreCamera(state().camera, at, state().size));
    },
    reveal(at) {
      const { camera, size } = state();
      const { x, y } = screenOf(camera, at);
      const isSeen = x > EDGE && y > EDGE && x < size.width - EDGE && y < size.height - EDGE;
      if (!isSeen) moveCamera(centreCamera(camera, at, size));
    },
    point(pointed) {
      if (JSON.stringify(pointed) !== JSON.stringify(state().pointed)) change({ pointed });
    },
    openFinding(id, how) {
      change({ openFinding: id, soughtFinding: how === 'seek' ? id : null });
    },
    foundFinding() {
      change({ soughtFinding: null });
    },
    comeFrom(cameFrom) {
      change({ cameFrom });
    },
    tell(told) {
      change({ told });
    },
    showSweepStep(sweepStep) {
      change({ sweepStep });
    },
    group(grouping) {
      change({ grouping });
    },
    showPad(pad) {
      change({ pad });
    },
  };
}

export const ViewContext = createContext<View | null>(null);

export function useView(): View {
  const view = useContext(ViewContext);
  if (view === null) throw new Error('useView: there is no ViewContext above');
  return view;
}

export function useViewState<Part>(pick: (state: ViewState) => Part): Part {
  const view = useView();
  return useSyncExternalStore(view.subscribe, () => pick(view.state()));
}
