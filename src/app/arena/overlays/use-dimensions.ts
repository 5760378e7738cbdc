import { type KeptConstraint, keptConstraints } from '../../../desk/constraints/kept-list.ts';
import type { DeskState } from '../../../desk/desk.ts';
import { chosenPieces } from '../../../desk/selection/selection.ts';
import { visibleFindings } from '../../check/visible-findings.ts';
import { useDeskState } from '../../desk-context.tsx';
import { useViewState, type ViewState } from '../../view.ts';
import { NARROW } from '../camera.ts';
import { usePickRadius } from '../input/pick-radius.ts';
import { badgeBoxes } from '../painters/badges.ts';
import { handleBoxes } from '../painters/handles.ts';
import { endBoxes } from '../painters/paint-travel.ts';
import { type DimensionLabel, dimensionLabels, poleDots } from './dimension-places.ts';

/** The dimensions that the arena shows, and where their numbers stand. */
export interface ShownDimensions {
  readonly kept: readonly KeptConstraint[];
  readonly labels: readonly DimensionLabel[];
}

/** The height of what stands at the edge of the picture: the legend and the buttons. Pixels. */
const HEAD = 56;
const NONE: ShownDimensions = { kept: [], labels: [] };

/** Those of the selection, at the Set stage, while the tape is off. */
function shownDimensions(
  state: Pick<DeskState, 'survey' | 'chosen' | 'stage' | 'tape' | 'findings'>,
  { camera, size }: Pick<ViewState, 'camera' | 'size'>,
  reach: number,
): ShownDimensions {
  const { survey, chosen } = state;
  if (state.stage !== 'set' || chosen.length === 0 || state.tape !== null) return NONE;
  const kept = keptConstraints({ survey, chosen }).filter((each) => each.dimensions.length > 0);
  if (kept.length === 0) return NONE;
  const taken = [
    ...handleBoxes({ survey, chosen }, { camera, reach: reach / camera.scale }),
    ...badgeBoxes(state.findings, camera),
    ...endBoxes(survey, camera),
    size.width < NARROW
      ? { minX: 0, maxX: size.width, minY: 0, maxY: HEAD }
      : { minX: 0, maxX: size.width, minY: size.height - HEAD, maxY: size.height },
  ];
  const dots = poleDots(chosenPieces(survey, chosen), camera);
  return { kept, labels: dimensionLabels(kept, camera, { size, dots, taken }) };
}

export function useDimensions(): ShownDimensions {
  const { camera, size } = useViewState((state) => state);
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const stage = useDeskState((state) => state.stage);
  const measuring = useDeskState((state) => state.tape);
  const findings = useDeskState(visibleFindings);
  const reach = usePickRadius();
  return shownDimensions({ survey, chosen, stage, tape: measuring, findings }, { camera, size }, reach);
}
