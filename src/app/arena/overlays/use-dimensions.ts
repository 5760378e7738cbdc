import { type Kept, keptOf } from '../../../desk/constraints/kept-list.ts';
import type { DeskState } from '../../../desk/desk.ts';
import { chosenPieces } from '../../../desk/selection/selection.ts';
import { lookedAt } from '../../check/visible-findings.ts';
import { useDeskState } from '../../desk-context.tsx';
import { useViewState, type ViewState } from '../../view.ts';
import { NARROW } from '../camera.ts';
import { useReach } from '../input/pick-radius.ts';
import { badgeBoxes } from '../painters/badges.ts';
import { handleBoxes } from '../painters/handles.ts';
import { endBoxes } from '../painters/paint-travel.ts';
import { poleDots, type TapeLabel, tapeLabels } from './dimension-places.ts';

/** What the arena shows of what is kept, and where its numbers stand. */
export interface ShownTapes {
  readonly kept: readonly Kept[];
  readonly labels: readonly TapeLabel[];
}

/** The height of what stands at the edge of the picture: the legend and the buttons. Pixels. */
const HEAD = 56;
const NONE: ShownTapes = { kept: [], labels: [] };

/** Those of what is chosen, at the Set stage, while no tape is in the hand. */
function shownTapes(
  state: Pick<DeskState, 'survey' | 'chosen' | 'stage' | 'measuring' | 'findings'>,
  { camera, size }: Pick<ViewState, 'camera' | 'size'>,
  reach: number,
): ShownTapes {
  const { survey, chosen } = state;
  if (state.stage !== 'set' || chosen.length === 0 || state.measuring !== null) return NONE;
  const kept = keptOf({ survey, chosen }).filter((each) => each.tapes.length > 0);
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
  return { kept, labels: tapeLabels(kept, camera, { size, dots, taken }) };
}

export function useTapes(): ShownTapes {
  const { camera, size } = useViewState((state) => state);
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const stage = useDeskState((state) => state.stage);
  const measuring = useDeskState((state) => state.measuring);
  const findings = useDeskState(lookedAt);
  const reach = useReach();
  return shownTapes({ survey, chosen, stage, measuring, findings }, { camera, size }, reach);
}
