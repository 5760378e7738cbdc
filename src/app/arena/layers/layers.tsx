import type { Context as KonvaContext } from 'konva/lib/Context';
import { Shape } from 'konva/lib/Shape';
import { useCallback, useSyncExternalStore } from 'react';
import { Shape as InkShape, Layer, Stage } from 'react-konva/lib/ReactKonvaCore';
import { sweptIn } from '../../check/sweep-words.ts';
import { lookedAt } from '../../check/visible-findings.ts';
import { useDeskState } from '../../desk-context.tsx';
import { useViewState } from '../../view.ts';
import { useReach } from '../input/pick-radius.ts';
import { labelBox } from '../overlays/dimension-places.ts';
import { useTapes } from '../overlays/use-dimensions.ts';
import { badgeBoxes, inkBadges } from '../painters/badges.ts';
import { handleBoxes, inkBends, inkChosen, inkCrossings, inkHandles } from '../painters/handles.ts';
import { DARK, LIGHT, type Looks } from '../painters/inks.ts';
import { measuredPlate } from '../painters/kept-mark.ts';
import { inkLabels } from '../painters/labels.ts';
import { inkMarks } from '../painters/marks.ts';
import { inkGround } from '../painters/paint-ground.ts';
import { inkThings } from '../painters/paint-obstacles.ts';
import { endBoxes, inkTravel } from '../painters/paint-travel.ts';
import { inkNarrowest, inkSweep } from '../painters/sweep-mark.ts';
import { inkTape } from '../painters/tape-mark.ts';
import { TapesLayer } from './dimensions-layer.tsx';
import { PrintsLayer } from './prints-layer.tsx';

// Named so that the bundler keeps the one shape the core build does not register by itself.
void Shape;

type Draw = (context: CanvasRenderingContext2D) => void;

/** One canvas a layer, each inked by one function from the course: nothing in it can be dragged or go astray. */
export function Layers() {
  const size = useViewState((state) => state.size);
  if (size.width === 0 || size.height === 0) return null;
  return (
    <Stage width={size.width} height={size.height} listening={false}>
      <GroundLayer />
      <ThingsLayer />
      <PrintsLayer />
      <OverLayer />
      <TapesLayer />
    </Stage>
  );
}

export function Inked({ draw }: { readonly draw: Draw }) {
  return (
    <Layer listening={false}>
      <InkShape
        sceneFunc={(context: KonvaContext) => draw(context._context)}
        listening={false}
        perfectDrawEnabled={false}
      />
    </Layer>
  );
}

function GroundLayer() {
  const looks = useLooks();
  const camera = useViewState((state) => state.camera);
  const arena = useDeskState((state) => state.course.arena);
  const unit = useDeskState((state) => state.course.unit);
  return <Inked draw={(context) => inkGround(context, { arena, unit, camera, looks })} />;
}

function ThingsLayer() {
  const looks = useLooks();
  const { camera, size, pointed } = useViewState((state) => state);
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const findings = useDeskState(lookedAt);
  const reach = useReach();
  const tapes = useTapes();
  const measured = useDeskState((state) => state.measured);
  return (
    <Inked
      draw={(context) => {
        inkThings(context, survey, { camera, looks });
        inkTravel(context, survey, { camera, looks, pointed });
        const kept = [
          ...badgeBoxes(findings, camera),
          ...endBoxes(survey, camera),
          ...handleBoxes({ survey, chosen }, { camera, reach: reach / camera.scale }),
          ...tapes.labels.map(labelBox),
          ...(measured === null ? [] : [measuredPlate(measured, camera)]),
        ];
        inkLabels(context, survey, { camera, looks, size, chosen, kept });
      }}
    />
  );
}

function OverLayer() {
  const looks = useLooks();
  const { camera, pointed } = useViewState((state) => state);
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const findings = useDeskState(lookedAt);
  const guides = useDeskState((state) => state.guides);
  const stage = useDeskState((state) => state.stage);
  const reach = useReach();
  return (
    <Inked
      draw={(context) => {
        const sweeps = stage === 'check' ? sweptIn(survey, { chosen, pointed, findings }) : [];
        for (const sweep of sweeps) inkSweep(context, { camera, looks, sweep });
        inkChosen(context, survey, { camera, looks, chosen });
        inkHandles(context, { survey, chosen }, { camera, looks, reach: reach / camera.scale });
        if (stage === 'ride') inkBends(context, survey, { camera, looks, chosen });
        inkCrossings(context, { survey, chosen, stage }, { camera, looks });
        const gap = pointed?.kind === 'gap' ? survey.line.gaps[pointed.gap] : undefined;
        if (gap !== undefined) inkTape(context, gap.ends, { camera, looks });
        inkBadges(context, findings, { camera, looks, pointed });
        for (const sweep of sweeps) inkNarrowest(context, survey, { camera, looks, sweep });
        const drawing = { ...looks, inks: { ...looks.inks, measure: looks.guide, faint: looks.guide } };
        for (const guide of guides) inkMarks(context, guide.marks, { camera, looks: drawing });
      }}
    />
  );
}

const DARK_WISH = '(prefers-color-scheme: dark)';

/** The looks for the theme that the person's system asks for. */
export function useLooks(): Looks {
  const listen = useCallback((heard: () => void) => {
    const wish = window.matchMedia(DARK_WISH);
    wish.addEventListener('change', heard);
    return () => wish.removeEventListener('change', heard);
  }, []);
  return useSyncExternalStore(listen, () => window.matchMedia(DARK_WISH).matches) ? DARK : LIGHT;
}
