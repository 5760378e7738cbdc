import { createContext, type ReactNode, useContext, useMemo } from 'react';
import type { ChangeOver } from '../../core/change/change-over.ts';
import { layoutById } from '../../core/change/layout-survey.ts';
import { type PlacedPiece, placedObstacle } from '../../core/course/placed.ts';
import { useDeskState, useLiveDeskState } from '../desk-context.tsx';
import { useComparedState } from './compared.ts';
import { useChangeOver } from './use-change-over.ts';

/** The change-over that the arena shows. */
export interface ShownPlan {
  readonly plan: ChangeOver;
  /** What lies now where it will not stay. */
  readonly leaving: readonly PlacedPiece[];
}

const ShownPlanContext = createContext<ShownPlan | null>(null);

/** The change-over that the arena shows; null: none. */
export function useShownPlan(): ShownPlan | null {
  return useContext(ShownPlanContext);
}

/** Whether a change-over is wanted in the arena, also while it is worked out. */
export function useWantsPlan(): boolean {
  const isChange = useDeskState((state) => state.stage === 'change');
  const isWanted = useComparedState((state) => state.showsPlan);
  return isChange && isWanted;
}

/** Gives the layers below the change-over that is wanted: they are rendered anew only when it is another one. */
export function ShownPlanProvider({ children }: { readonly children: ReactNode }) {
  const isWanted = useWantsPlan();
  return isWanted ? <Planned>{children}</Planned> : children;
}

function Planned({ children }: { readonly children: ReactNode }) {
  const isDragging = useLiveDeskState((desk) => desk.gesture !== null);
  const current = useLiveDeskState((desk) => desk.course.current);
  const { answer } = useChangeOver();
  const shown = useMemo((): ShownPlan | null => {
    if (answer === null) return null;
    const { of, told } = answer;
    const leaves = new Set(
      told.carries.flatMap((carry) => (carry.from.kind === 'ground' ? [carry.from.load.key] : [])),
    );
    const before = of.from === null ? [] : layoutById(of.course, of.from).obstacles;
    const leaving = before.flatMap((obstacle) => placedObstacle(obstacle).pieces).filter(({ key }) => leaves.has(key));
    return { plan: told, leaving };
  }, [answer]);
  // Arrows to where things lay before the drag would be read as where they go.
  const isRight = !isDragging && answer?.of.to === current;
  return <ShownPlanContext value={isRight ? shown : null}>{children}</ShownPlanContext>;
}
