import { createContext, useContext, useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import type { Point } from '../../../core/plane/point.ts';

/** Where the hand is over the arena, in its pixels. */
export interface HandState {
  /** A finger that drags something; null: none does. */
  readonly finger: Point<'screen'> | null;
  /** Where the menu of what is chosen was asked for; null: it is shut. */
  readonly menu: Point<'screen'> | null;
  /** The canvases of the arena, lowest first, of which the loupe shows a part. */
  readonly canvases: readonly HTMLCanvasElement[];
}

export interface HandStore {
  state(): HandState;
  subscribe(listener: () => void): () => void;
  change(next: Partial<HandState>): void;
}

export function createHandStore(): HandStore {
  const store = createStore<HandState>()(() => ({ finger: null, menu: null, canvases: [] }));
  return {
    state: store.getState,
    subscribe: (listener) => store.subscribe(() => listener()),
    change: (next) => store.setState(next),
  };
}

export const HandContext = createContext<HandStore | null>(null);

export function useHand(): HandStore {
  const hand = useContext(HandContext);
  if (hand === null) throw new Error('useHand: there is no HandContext above');
  return hand;
}

export function useHandState<Part>(pick: (state: HandState) => Part): Part {
  const hand = useHand();
  return useSyncExternalStore(hand.subscribe, () => pick(hand.state()));
}
