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
  const theme = useTheme();
  const camera = useViewState((state) => state.camera);
  const course = useDeskState((state) => state.course);
  const shown = useDeskState((state) => state.survey.layout);
  const isChange = useDeskState((state) => state.stage === 'change');
  const state = useComparedState((compared) => compared);
  const carried = useShownPlan();
  if (!isChange || (state.mode !== 'ghost' && carried === null)) return null;
  const others = comparedLayouts(course, state);
  return (
    <PaintedLayer
      draw={(context) => {
        if (carried !== null) return paintGhost(context, carried.leaving, { camera, theme, index: 0 });
        for (const [index, layout] of others.entries()) {
          paintGhost(context, ghostPieces(layout, shown), { camera, theme, index: ghostIndex(index) });
        }
      }}
    />
  );
}

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
