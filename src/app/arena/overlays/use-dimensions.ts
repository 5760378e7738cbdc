import type { Finding } from '../../../core/checks/check.ts';
import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import type { Survey } from '../../../core/survey.ts';
import { type KeptConstraint, keptConstraints } from '../../../desk/constraints/kept-list.ts';
import type { DeskState } from '../../../desk/desk.ts';
import { chosenPieces } from '../../../desk/selection/selection.ts';
import { visibleFindings } from '../../check/visible-findings.ts';
import { useDeskState } from '../../desk-context.tsx';
import { useViewState, type ViewState } from '../../view.ts';
import { arenaFurniture, type Camera, furnitureBounds, type ScreenSize } from '../camera.ts';
import { usePickRadius } from '../input/pick-radius.ts';
import { badgeBoxes } from '../painters/badges.ts';
import { endBoxes, endPlaces } from '../painters/ends.ts';
import { handleBoxes } from '../painters/handles.ts';
import { type DimensionLabel, dimensionLabels, poleDots } from './dimension-places.ts';

/** The dimensions that the arena shows, and where their numbers stand. */
export interface ShownDimensions {
  readonly kept: readonly KeptConstraint[];
  readonly labels: readonly DimensionLabel[];
}

const NONE: ShownDimensions = { kept: [], labels: [] };

type DimensionsFrom = readonly [
  chosen: readonly string[],
  stage: DeskState['stage'],
  tape: DeskState['tape'],
  findings: readonly Finding[],
  camera: Camera,
  size: ScreenSize,
  reach: number,
];

/** Placed once for the picture and for the fields over it. */
const placedDimensions = memoizeByIdentity(
  (survey: Survey, ...[chosen, stage, tape, findings, camera, size, reach]: DimensionsFrom): ShownDimensions => {
    if (stage !== 'set' || chosen.length === 0 || tape !== null) return NONE;
    const kept = keptConstraints({ survey, chosen }).filter((each) => each.dimensions.length > 0);
    if (kept.length === 0) return NONE;
    const badges = badgeBoxes(findings, camera);
    const taken = [
      ...handleBoxes({ survey, chosen }, { camera, reach: reach / camera.scale }),
      ...badges,
      ...endBoxes(endPlaces(survey, camera, badges)),
      furnitureBounds(arenaFurniture(survey.course.arena, size), size),
    ];
    const dots = poleDots(chosenPieces(survey, chosen), camera);
    return { kept, labels: dimensionLabels(kept, camera, { size, dots, taken }) };
  },
);

/** Those of the selection, at the Set stage, while the tape is off. `reach` is the pick radius in pixels. */
export function shownDimensions(
  desk: DeskState,
  { camera, size }: Pick<ViewState, 'camera' | 'size'>,
  reach: number,
): ShownDimensions {
  const { survey, chosen, stage, tape } = desk;
  return placedDimensions(survey, chosen, stage, tape, visibleFindings(desk), camera, size, reach);
}

/** The same, read when the page follows the desk. */
export function useDimensions(): ShownDimensions {
  const camera = useViewState((state) => state.camera);
  const size = useViewState((state) => state.size);
  const desk = useDeskState((state) => state);
  return shownDimensions(desk, { camera, size }, usePickRadius());
}
