import { memo } from 'react';
import type { PlacedPiece } from '../../../core/course/placed.ts';
import { comparedLayouts, useComparedState } from '../../change/compared.ts';
import { ghostPieces, moveWords, originOf } from '../../change/origins.ts';
import { useShownPlan } from '../../change/shown-plan.tsx';
import { useFocusedKey } from '../../change/use-focused-key.ts';
import { useDeskState } from '../../desk-context.tsx';
import { useViewState } from '../../view.ts';
import { screenBox } from '../painters/labels.ts';
import { type GhostIndex, type OriginArrow, originPlates, paintGhost, paintOrigin } from '../painters/paint-ghost.ts';
import { PaintedLayer } from './painted-layer.tsx';
import { useTheme } from './use-theme.ts';

/** The compared layouts as outlines under the shown one, at Change; with a change-over, what it takes from where it lies. */
export function GhostLayer() {
  const course = useDeskState((state) => state.course);
  const shown = useDeskState((state) => state.survey.layout);
  const isChange = useDeskState((state) => state.stage === 'change');
  const state = useComparedState((compared) => compared);
  const carried = useShownPlan();
  if (!isChange) return null;
  if (carried !== null) return <Ghosts first={carried.leaving} second={undefined} />;
  const [first, second] = state.mode === 'ghost' ? comparedLayouts(course, state) : [];
  if (first === undefined) return null;
  return (
    <Ghosts first={ghostPieces(first, shown)} second={second === undefined ? undefined : ghostPieces(second, shown)} />
  );
}

interface GhostsProps {
  readonly first: readonly PlacedPiece[];
  readonly second: readonly PlacedPiece[] | undefined;
}

/** Painted anew when the outlines are others, which most moves of a drag do not make. */
const Ghosts = memo(({ first, second }: GhostsProps) => {
  const theme = useTheme();
  const camera = useViewState((state) => state.camera);
  return (
    <PaintedLayer
      draw={(context) => {
        paintGhost(context, first, { camera, theme, index: 0 });
        if (second !== undefined) paintGhost(context, second, { camera, theme, index: 1 });
      }}
    />
  );
});

/** An arrow from where the thing in focus lies in each compared layout to where it lies here. */
export function OriginLayer() {
  const theme = useTheme();
  const { camera, size } = useViewState((state) => state);
  const course = useDeskState((state) => state.course);
  const shown = useDeskState((state) => state.survey.layout);
  const isChange = useDeskState((state) => state.stage === 'change');
  const state = useComparedState((compared) => compared);
  const key = useFocusedKey();
  const isCarried = useShownPlan() !== null;
  const placed = useDeskState((desk) => desk.survey.obstacles);
  if (!isChange || state.mode !== 'ghost' || key === null || isCarried) return null;
  const others = comparedLayouts(course, state);
  const arrows = others.flatMap((layout, index): readonly OriginArrow[] => {
    const origin = originOf(layout, shown, key);
    if (origin?.kind !== 'moved') return [];
    const { from, to } = origin;
    return [{ from, to, words: moveWords(origin, course), index: ghostIndex(index) }];
  });
  if (arrows.length === 0) return null;
  return (
    <PaintedLayer
      draw={(context) => {
        const kept = placed.map(({ bounds }) => screenBox(bounds, camera));
        const plates = originPlates(arrows, { camera, size, kept });
        for (const [index, arrow] of arrows.entries()) {
          const plate = plates[index];
          if (plate !== undefined) paintOrigin(context, arrow, { camera, theme, plate });
        }
      }}
    />
  );
}

function ghostIndex(index: number): GhostIndex {
  return index === 0 ? 0 : 1;
}
