import { memo, type PointerEvent, useEffect, useMemo, useRef } from 'react';
import { Stage } from 'react-konva/lib/ReactKonvaCore';
import { layoutSurvey } from '../../core/change/layout-survey.ts';
import { presentCourse } from '../../core/course/history.ts';
import type { Survey } from '../../core/survey.ts';
import { counted } from '../../core/text/sentence.ts';
import { pieceUnderPoint } from '../../desk/selection/hit.ts';
import { groundOf } from '../arena/camera.ts';
import { PICK_RADIUS } from '../arena/input/pick-radius.ts';
import { createPointerController } from '../arena/input/pointer-controller.ts';
import { pointerSample } from '../arena/input/pointer-sample.ts';
import { useWheel } from '../arena/input/use-wheel.ts';
import { PaintedLayer } from '../arena/layers/painted-layer.tsx';
import { useTheme } from '../arena/layers/use-theme.ts';
import { paintChosen } from '../arena/painters/handles.ts';
import { paintLabels } from '../arena/painters/labels.ts';
import { paintGround } from '../arena/painters/paint-ground.ts';
import { paintObstacles } from '../arena/painters/paint-obstacles.ts';
import { endBoxes, paintTravel } from '../arena/painters/paint-travel.ts';
import { useDeskState } from '../desk-context.tsx';
import { useView, useViewState } from '../view.ts';
import { useCompared } from './compared.ts';
import { becameOf, cameFrom } from './origins.ts';
import { useFocusedKey } from './use-focused-key.ts';

/** A plain drawing of another layout under the camera of the arena: it is moved and zoomed, and not edited. */
export function OtherDrawing({ layout }: { readonly layout: string }) {
  const view = useView();
  const compared = useCompared();
  const { camera, size } = useViewState((state) => state);
  // While something is dragged the other layout stays as it is.
  const course = useDeskState((state) => presentCourse(state.history));
  const shown = useDeskState((state) => state.survey.layout);
  const key = useFocusedKey();
  const box = useRef<HTMLDivElement>(null);
  const controller = useMemo(() => {
    const made = createPointerController({
      camera: () => view.state().camera,
      pointer: () => undefined,
      pan: view.pan,
      zoom: view.zoom,
    });
    made.setPanMode(true);
    return made;
  }, [view]);
  useWheel(box, view);
  useEffect(() => () => compared.focus(null), [compared]);

  const survey = course.layouts.some(({ id }) => id === layout) ? layoutSurvey(course, layout) : undefined;
  if (survey === undefined) return null;
  const move = (event: PointerEvent<HTMLDivElement>) => {
    const sample = pointerSample(event);
    controller.move(sample);
    if (event.buttons !== 0 || event.pointerType === 'touch') return;
    const piece = pieceUnderPoint(survey, groundOf(camera, sample.at), PICK_RADIUS.mouse / camera.scale / 2);
    const id = piece?.obstacle;
    compared.focus(id === undefined ? null : (becameOf(survey.layout, shown, id) ?? id));
  };
  return (
    <div
      ref={box}
      className="arena arena-ground"
      role="img"
      aria-label={`${survey.layout.title}, for comparison: ${counted(survey.obstacles.length, 'obstacle')}`}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        controller.down(pointerSample(event));
      }}
      onPointerMove={move}
      onPointerLeave={() => compared.focus(null)}
      onPointerUp={(event) => controller.up(pointerSample(event))}
      onPointerCancel={(event) => controller.cancel(pointerSample(event))}
    >
      {size.width > 0 && size.height > 0 && (
        <Stage width={size.width} height={size.height} listening={false}>
          <GroundOf survey={survey} />
          <ThingsOf survey={survey} marked={key === null ? undefined : cameFrom(survey.layout, shown, key)} />
        </Stage>
      )}
    </div>
  );
}

// Painted anew with the camera and with what it shows, and not at each move of a drag in the arena.
const GroundOf = memo(({ survey: { course } }: { readonly survey: Survey }) => {
  const theme = useTheme();
  const camera = useViewState((state) => state.camera);
  return <PaintedLayer draw={(context) => paintGround(context, { ...course, camera, theme })} />;
});

const ThingsOf = memo(({ survey, marked }: { readonly survey: Survey; readonly marked: string | undefined }) => {
  const theme = useTheme();
  const { camera, size } = useViewState((state) => state);
  const chosen = marked === undefined ? [] : [marked];
  return (
    <PaintedLayer
      draw={(context) => {
        paintObstacles(context, survey, { camera, theme });
        paintTravel(context, survey, { camera, theme, pointed: null });
        paintChosen(context, survey, { camera, theme, chosen });
        paintLabels(context, survey, { camera, theme, size, chosen, kept: endBoxes(survey, camera) });
      }}
    />
  );
});
