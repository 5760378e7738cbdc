import { createContext, useContext, useSyncExternalStore } from 'react';
import type { Arena } from '../core/course/course.ts';
import type { Point } from '../core/plane/point.ts';
import type { PageOptions } from '../sheets/sheet.ts';
import { type Camera, centred, fitted, panned, type Size, zoomed } from './arena/camera.ts';
import type { Grouping } from './check/groups.ts';

/** What a person points at, in the arena or on the strip, so that the other one can show it too. */
export type Pointed =
  | { readonly kind: 'leg'; readonly leg: number }
  | { readonly kind: 'gap'; readonly gap: number }
  | { readonly kind: 'finding'; readonly id: string }
  | null;

export interface ViewState {
  readonly camera: Camera;
  readonly size: Size;
  readonly pointed: Pointed;
  /** How the findings are put together at Check. */
  readonly grouping: Grouping;
  /** The sheet that is shown and posted, by id, and its paper. */
  readonly sheet: string;
  readonly ask: PageOptions;
}

/** How the course is looked at: nothing here belongs to the course. */
export interface View {
  state(): ViewState;
  listen(heard: () => void): () => void;
  /** The arena's place on the screen became known or changed. Fits until somebody moves the camera. */
  measure(size: Size, arena: Arena): void;
  fit(): void;
  zoom(factor: number, about?: Point<'screen'>): void;
  pan(dx: number, dy: number): void;
  /** Brings a place on the ground to the middle. */
  show(at: Point): void;
  point(pointed: Pointed): void;
  group(grouping: Grouping): void;
  turnTo(sheet: string): void;
  print(ask: PageOptions): void;
}

const USUAL_ASK: PageOptions = { paper: 'letter', orientation: 'fit' };
const USUAL_SHEET = 'pattern';
const NO_SIZE: Size = { width: 0, height: 0 };

export function createView(arena: Arena): View {
  let ground = arena;
  let moved = false;
  let state: ViewState = {
    camera: fitted(arena, NO_SIZE),
    size: NO_SIZE,
    pointed: null,
    grouping: 'obstacle',
    sheet: USUAL_SHEET,
    ask: USUAL_ASK,
  };
  const hearers = new Set<() => void>();
  const change = (next: Partial<ViewState>) => {
    state = { ...state, ...next };
    for (const heard of hearers) heard();
  };
  const look = (camera: Camera) => {
    moved = true;
    change({ camera });
  };
  return {
    state: () => state,
    listen(heard) {
      hearers.add(heard);
      return () => hearers.delete(heard);
    },
    measure(size, now) {
      const sameGround = now.length === ground.length && now.width === ground.width;
      if (sameGround && size.width === state.size.width && size.height === state.size.height) return;
      ground = now;
      const turns = fitted(now, size).turned !== state.camera.turned;
      if (!sameGround || turns) moved = false;
      change({ size, camera: moved ? state.camera : fitted(now, size) });
    },
    fit() {
      moved = false;
      change({ camera: fitted(ground, state.size) });
    },
    zoom(factor, about) {
      look(zoomed(state.camera, factor, about ?? { x: state.size.width / 2, y: state.size.height / 2 }));
    },
    pan(dx, dy) {
      look(panned(state.camera, dx, dy));
    },
    show(at) {
      look(centred(state.camera, at, state.size));
    },
    point(pointed) {
      if (JSON.stringify(pointed) !== JSON.stringify(state.pointed)) change({ pointed });
    },
    group(grouping) {
      change({ grouping });
    },
    turnTo(sheet) {
      change({ sheet });
    },
    print(ask) {
      change({ ask });
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
  return useSyncExternalStore(view.listen, () => pick(view.state()));
}
