import { type PointerEvent, useEffect, useMemo, useRef } from 'react';
import { layoutSurvey } from '../../core/change/layout-survey.ts';
import { presentCourse } from '../../core/course/history.ts';
import type { Survey } from '../../core/survey.ts';
import { pieceUnderPoint } from '../../desk/selection/hit.ts';
import { changeWords } from '../../words/change.ts';
import { terms } from '../../words/terms.ts';
import { type Camera, groundOf, type ScreenSize } from '../arena/camera.ts';
import { PICK_RADIUS } from '../arena/input/pick-radius.ts';
import { createPointerController } from '../arena/input/pointer-controller.ts';
import { pointerSample } from '../arena/input/pointer-sample.ts';
import { useWheel } from '../arena/input/use-wheel.ts';
import type { PictureLayer } from '../arena/layers/picture.ts';
import { PlainPicture } from '../arena/layers/plain-picture.tsx';
import { useTheme } from '../arena/layers/use-theme.ts';
import { arenaLabels } from '../arena/painters/arena-labels.ts';
import { paintEnds } from '../arena/painters/ends.ts';
import { paintChosen } from '../arena/painters/handles.ts';
import type { Theme } from '../arena/painters/inks.ts';
import { paintLabels } from '../arena/painters/labels.ts';
import { paintGround } from '../arena/painters/paint-ground.ts';
import { paintObstacles } from '../arena/painters/paint-obstacles.ts';
import { paintTravel } from '../arena/painters/paint-travel.ts';
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
  const theme = useTheme();
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
  const marked = key === null ? undefined : cameFrom(survey.layout, shown, key);
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
      aria-label={changeWords.forComparison(survey.layout.title, terms.obstacles(survey.obstacles.length))}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        controller.down(pointerSample(event));
      }}
      onPointerMove={move}
      onPointerLeave={() => compared.focus(null)}
      onPointerUp={(event) => controller.up(pointerSample(event))}
      onPointerCancel={(event) => controller.cancel(pointerSample(event))}
    >
      <PlainPicture layers={LAYERS} scene={{ survey, marked, camera, size, theme }} size={size} />
    </div>
  );
}

interface Scene {
  readonly survey: Survey;
  /** The obstacle that the one in focus came from, by id. */
  readonly marked: string | undefined;
  readonly camera: Camera;
  readonly size: ScreenSize;
  readonly theme: Theme;
}

const ground: PictureLayer<Scene> = {
  inputs: ({ survey, camera, theme }) => [survey.course.arena, survey.course.unit, camera, theme],
  paint: (context, { survey, camera, theme }) => paintGround(context, { ...survey.course, camera, theme }),
};

const things: PictureLayer<Scene> = {
  inputs: ({ survey, marked, camera, theme }) => [survey, marked, camera, theme],
  paint(context, { survey, marked, camera, size, theme }) {
    const chosen = marked === undefined ? [] : [marked];
    paintObstacles(context, survey, { camera, theme });
    paintTravel(context, survey, { camera, theme, pointed: null });
    paintChosen(context, survey, { camera, theme, chosen });
    const { ends, labels } = arenaLabels(survey, { camera, size }, { badges: [], kept: [], hasLine: true });
    paintEnds(context, ends, { theme });
    paintLabels(context, labels, { theme, chosen });
  },
};

const LAYERS = [ground, things] as const;
