/** app/ shows what the desk knows and passes on what people do. Nothing imports it. */
import { createContext, type ReactNode, useCallback, useContext, useMemo, useSyncExternalStore } from 'react';
import type { Course } from '../core/course/course.ts';
import type { Survey } from '../core/survey.ts';
import type { Desk, DeskState } from '../desk/desk.ts';
import { PACES, type PacedDesk, pacedDesk } from './paced-desk.ts';

/** The desk, and its state at each pace. */
interface Desks {
  readonly desk: Desk;
  readonly paced: Readonly<Record<keyof typeof PACES, PacedDesk>>;
}

const DeskContext = createContext<Desks | null>(null);

export function DeskProvider({ desk, children }: { readonly desk: Desk; readonly children: ReactNode }) {
  const desks = useMemo((): Desks => {
    const { following, resting, settled } = PACES;
    return {
      desk,
      paced: {
        following: pacedDesk(desk, following),
        resting: pacedDesk(desk, resting),
        settled: pacedDesk(desk, settled),
      },
    };
  }, [desk]);
  return <DeskContext value={desks}>{children}</DeskContext>;
}

function useDesks(): Desks {
  const desks = useContext(DeskContext);
  if (desks === null) throw new Error('useDesk: there is no DeskProvider above');
  return desks;
}

/** The desk on which the course lies. */
export function useDesk(): Desk {
  return useDesks().desk;
}

function usePart<Part>(store: PacedDesk, pick: (state: DeskState) => Part): Part {
  const subscribe = useCallback((listener: () => void) => store.subscribe(listener), [store]);
  return useSyncExternalStore(subscribe, () => pick(store.state()));
}

/**
 * A part of the desk's state for what stands around the arena. While something is dragged it follows when the hand rests,
 * and once a second when there is time; otherwise, and at the end of a drag, at once. `pick` must return something that the state holds.
 */
export function useDeskState<Part>(pick: (state: DeskState) => Part): Part {
  return usePart(useDesks().paced.following, pick);
}

/**
 * A part of the state that is read at each pointer move: only for what the eye follows in a drag. Everything else that
 * renders in a move makes the drag slower.
 */
export function useLiveDeskState<Part>(pick: (state: DeskState) => Part): Part {
  return usePart(useDesks().desk, pick);
}

/** The desk's state at the pace of `useDeskState`, for those who listen outside of React. */
export function useFollowingDesk(): PacedDesk {
  return useDesks().paced.following;
}

/** The survey when nothing is dragged; during a drag the last such one: what takes long waits for the end of it. */
export function useRestingSurvey(): Survey {
  return usePart(useDesks().paced.resting, (state) => state.survey);
}

/** The course as it was when it last lay still for a moment: what takes longer than a frame is worked out from it. */
export function useSettledCourse(): Course {
  return usePart(useDesks().paced.settled, (state) => state.course);
}
