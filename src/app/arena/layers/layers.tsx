import { Stage } from 'react-konva/lib/ReactKonvaCore';
import { ShownPlanProvider, useShownPlan } from '../../change/shown-plan.tsx';
import { sweepsShown } from '../../check/sweep-words.ts';
import { visibleFindings } from '../../check/visible-findings.ts';
import { useDeskState } from '../../desk-context.tsx';
import { useViewState } from '../../view.ts';
import { usePickRadius } from '../input/pick-radius.ts';
import { labelBox } from '../overlays/dimension-places.ts';
import { useDimensions } from '../overlays/use-dimensions.ts';
import { badgeBoxes, paintBadges } from '../painters/badges.ts';
import { carryLabels } from '../painters/carry-marks.ts';
import { handleBoxes, paintBends, paintChosen, paintCrossings, paintHandles } from '../painters/handles.ts';
import { tapeReadingPlate } from '../painters/kept-mark.ts';
import { paintLabels } from '../painters/labels.ts';
import { paintMarks } from '../painters/marks.ts';
import { paintGround } from '../painters/paint-ground.ts';
import { letterPlaces, paintLetters } from '../painters/paint-letters.ts';
import { paintObstacles } from '../painters/paint-obstacles.ts';
import { paintPlaces, placeWords } from '../painters/paint-places.ts';
import { endBoxes, paintTravel } from '../painters/paint-travel.ts';
import { paintNarrowest, paintSweep, paintSweepStep } from '../painters/sweep-mark.ts';
import { paintGap } from '../painters/tape-mark.ts';
import { CarriesLayer } from './carries-layer.tsx';
import { DimensionsLayer } from './dimensions-layer.tsx';
import { GhostLayer, OriginLayer } from './ghost-layer.tsx';
import { PaintedLayer } from './painted-layer.tsx';
import { PrintsLayer } from './prints-layer.tsx';
import { useTheme } from './use-theme.ts';

/** One canvas a layer, each painted by one function from the course: no node of its own can be dragged. */
export function Layers() {
  const size = useViewState((state) => state.size);
  if (size.width === 0 || size.height === 0) return null;
  return (
    <Stage width={size.width} height={size.height} listening={false}>
      <ShownPlanProvider>
        <GroundLayer />
        <GhostLayer />
        <ObstaclesLayer />
        <PrintsLayer />
        <OverlayLayer />
        <DimensionsLayer />
        <OriginLayer />
        <CarriesLayer />
      </ShownPlanProvider>
    </Stage>
  );
}

function GroundLayer() {
  const theme = useTheme();
  const camera = useViewState((state) => state.camera);
  const arena = useDeskState((state) => state.course.arena);
  const unit = useDeskState((state) => state.course.unit);
  return <PaintedLayer draw={(context) => paintGround(context, { arena, unit, camera, theme })} />;
}

function ObstaclesLayer() {
  const theme = useTheme();
  const { camera, size, pointed } = useViewState((state) => state);
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const findings = useDeskState(visibleFindings);
  const reach = usePickRadius();
  const tapes = useDimensions();
  const measured = useDeskState((state) => state.tapeReading);
  const carried = useShownPlan();
  return (
    <PaintedLayer
      draw={(context) => {
        paintObstacles(context, survey, { camera, theme });
        // A crew walks; the line of the horse would lie under its arrows.
        const words = carried === null ? placeWords(survey, camera) : [];
        if (carried === null) {
          paintTravel(context, survey, { camera, theme, pointed });
          paintPlaces(context, { survey, words }, { camera, theme });
        }
        const letters = letterPlaces(survey, camera, [...endBoxes(survey, camera), ...words.map(({ box }) => box)]);
        paintLetters(context, letters, { camera, theme });
        const kept = [
          ...letters.map(({ box }) => box),
          ...badgeBoxes(findings, camera),
          ...endBoxes(survey, camera),
          ...words.map(({ box }) => box),
          ...handleBoxes({ survey, chosen }, { camera, reach: reach / camera.scale }),
          ...tapes.labels.map(labelBox),
          ...(carried === null ? [] : carryLabels(carried.plan, camera, size, null).map(({ box }) => box)),
          ...(measured === null ? [] : [tapeReadingPlate(measured, camera)]),
        ];
        paintLabels(context, survey, { camera, theme, size, chosen, kept });
      }}
    />
  );
}

function OverlayLayer() {
  const theme = useTheme();
  const { camera, pointed, sweepStep } = useViewState((state) => state);
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const findings = useDeskState(visibleFindings);
  const guides = useDeskState((state) => state.guides);
  const isDragging = useDeskState((state) => state.gesture !== null);
  const stage = useDeskState((state) => state.stage);
  const reach = usePickRadius();
  return (
    <PaintedLayer
      draw={(context) => {
        const sweeps = stage === 'check' && !isDragging ? sweepsShown(survey, { chosen, pointed, findings }) : [];
        for (const sweep of sweeps) paintSweep(context, { camera, theme, sweep });
        paintChosen(context, survey, { camera, theme, chosen });
        paintHandles(context, { survey, chosen }, { camera, theme, reach: reach / camera.scale });
        if (stage === 'ride') paintBends(context, survey, { camera, theme, chosen });
        paintCrossings(context, { survey, chosen, stage }, { camera, theme });
        const gap = pointed?.kind === 'gap' ? survey.line.gaps[pointed.gap] : undefined;
        if (gap !== undefined) paintGap(context, gap.ends, { camera, theme });
        paintBadges(context, findings, { camera, theme, pointed });
        for (const sweep of sweeps) {
          paintNarrowest(context, survey, { camera, theme, sweep });
          if (sweepStep?.obstacle !== sweep.obstacle) continue;
          paintSweepStep(context, survey, { camera, theme, sweep, step: sweepStep.step });
        }
        const drawing = { ...theme, inks: { ...theme.inks, measure: theme.guide, faint: theme.guide } };
        for (const guide of guides) paintMarks(context, guide.marks, { camera, theme: drawing });
      }}
    />
  );
}
