import { type KeyboardEvent, type PointerEvent, useCallback, useEffect, useMemo, useRef } from 'react';
import { printLength } from '../../core/measure/length.ts';
import type { Desk } from '../../desk/desk.ts';
import { isGrasp } from '../../desk/gestures/press.ts';
import { arenaWords } from '../../words/arena.ts';
import { comparedLayouts, useCompared } from '../change/compared.ts';
import { ShownPlanProvider } from '../change/shown-plan.tsx';
import { createBadgePress } from '../check/badge-press.ts';
import { CHECKS_PART } from '../check/later-checks.ts';
import { visibleFindings } from '../check/visible-findings.ts';
import { useDesk, useDeskState, useLiveDeskState } from '../desk-context.tsx';
import { keyPressOf } from '../key-press.ts';
import { lazyComponent } from '../lazy-panel.tsx';
import { useView, useViewState, type View } from '../view.ts';
import { createHandStore, HandContext, type HandStore } from './input/hand-store.ts';
import { isFromFinger, isMenuKey, openMenu, openMenuAtChosen } from './input/menu-request.ts';
import { createPointerController, type PointerController, type PointerSample } from './input/pointer-controller.ts';
import { pointerSample } from './input/pointer-sample.ts';
import { comparedAt, pointedAt } from './input/pointing.ts';
import { asSeen } from './input/seen-arrows.ts';
import { useWheel } from './input/use-wheel.ts';
import { ArenaPicture } from './layers/arena-picture.tsx';
import { DimensionLabels, focusDimensions } from './overlays/dimension-labels.tsx';
import { HintLine } from './overlays/hint-line.tsx';
import {
  AlongBar,
  ArenaLegend,
  ConflictDialog,
  HandOverlays,
  QuestionDialog,
  SuggestionBar,
} from './overlays/later-overlays.ts';
import { TextAlternative } from './overlays/text-alternative.tsx';
import { ViewButtons } from './overlays/view-buttons.tsx';

const EmptyArena = lazyComponent(() => import('../first/empty-arena.tsx').then((module) => module.EmptyArena));

const ZOOM_STEP = 1.25;

/** The arena: one focusable drawing. Every input goes to the desk, in metres. */
export function ArenaView() {
  const desk = useDesk();
  const view = useView();
  const compared = useCompared();
  const camera = useViewState((state) => state.camera);
  const isBusy = useLiveDeskState((state) => state.gesture !== null);
  const arena = useDeskState((state) => state.course.arena);
  const isEmpty = useDeskState((state) => state.stage === 'set' && state.survey.obstacles.length === 0);
  const box = useRef<HTMLDivElement>(null);
  const hand = useMemo(createHandStore, []);
  const controller = useMemo(() => pointerController(desk, view, hand), [desk, view, hand]);
  const unit = useDeskState((state) => state.course.unit);
  const print = useCallback((far: number) => printLength(far, unit), [unit]);

  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const measure = () => view.measure({ width: element.clientWidth, height: element.clientHeight }, arena);
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    measure();
    return () => watcher.disconnect();
  }, [view, arena]);
  useWheel(box, view);

  const pointer = (send: (sample: PointerSample) => void) => (event: PointerEvent<HTMLDivElement>) =>
    send(pointerSample(event));
  const down = (event: PointerEvent<HTMLDivElement>) => {
    // Scrolling to the focus would move a phone's page away under the sample.
    event.currentTarget.focus({ preventScroll: true });
    event.currentTarget.setPointerCapture(event.pointerId);
    if (event.button === 1) event.preventDefault();
    view.point(null);
    controller.down(pointerSample(event));
  };
  const move = (event: PointerEvent<HTMLDivElement>) => {
    const sample = pointerSample(event);
    controller.move(sample);
    if (event.buttons !== 0 || event.pointerType === 'touch') return;
    const state = desk.state();
    const findings = visibleFindings(state);
    const { camera } = view.state();
    view.point(pointedAt(sample.at, { survey: state.survey, findings, camera }));
    const others = state.stage === 'change' ? comparedLayouts(state.course, compared.state()) : [];
    if (others.length > 0) compared.focus(comparedAt(sample.at, { survey: state.survey, others, camera }));
  };
  const leave = () => {
    view.point(null);
    compared.focus(null);
  };
  return (
    <HandContext value={hand}>
      <div className="arena">
        <div
          ref={box}
          className={isBusy ? 'arena-ground is-busy' : 'arena-ground'}
          role="application"
          aria-label={arenaWords.arenaSeenFromAbove}
          aria-describedby="arena-summary arena-keys"
          data-pane="arena"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the arena takes key strokes.
          tabIndex={0}
          data-scale={camera.scale}
          data-origin={`${camera.x} ${camera.y}`}
          data-turned={camera.turned}
          onPointerDown={down}
          onPointerMove={move}
          onPointerLeave={leave}
          onPointerUp={pointer(controller.up)}
          onPointerCancel={pointer(controller.cancel)}
          // A tap ends with a click on whatever lies there by then: it would press a number that the tap has only brought up.
          onTouchEnd={(event) => event.preventDefault()}
          onContextMenu={(event) => {
            event.preventDefault();
            // A finger asks by a long press of its own, and the menu key by its key.
            if (event.button === 2 && event.nativeEvent instanceof MouseEvent && !isFromFinger(event.nativeEvent)) {
              const box = event.currentTarget.getBoundingClientRect();
              openMenu({ desk, view, hand }, { x: event.clientX - box.left, y: event.clientY - box.top });
            }
          }}
          onKeyDown={(event) => pressKey(event, { desk, view, hand: controller, store: hand })}
          onKeyUp={(event) => event.key === ' ' && controller.setPanMode(false)}
          onBlur={() => controller.setPanMode(false)}
        >
          <ShownPlanProvider>
            <ArenaPicture drawn={(canvases) => hand.change({ canvases })} />
          </ShownPlanProvider>
        </div>
        <TextAlternative />
        <DimensionLabels />
        <div className="arena-head">
          <HintLine />
          <SuggestionBar />
          <AlongBar />
        </div>
        {isEmpty && <EmptyArena />}
        <ConflictDialog />
        <QuestionDialog />
        <ArenaLegend />
        <ViewButtons />
        <HandOverlays print={print} />
      </div>
    </HandContext>
  );
}

function pointerController(desk: Desk, view: View, hand: HandStore): PointerController {
  const arena = createPointerController({
    camera: () => view.state().camera,
    pointer: (touch) => desk.pointer(touch),
    grasps: (touch) => isGrasp(touch, desk.state()),
    fingerAt: (finger) => hand.change({ finger }),
    menu: (at) => openMenu({ desk, view, hand }, at),
    pan: view.pan,
    zoom: view.zoom,
  });
  return createBadgePress({ desk, view }, arena);
}

function pressKey(
  event: KeyboardEvent<HTMLDivElement>,
  {
    desk,
    view,
    hand,
    store,
  }: { readonly desk: Desk; readonly view: View; readonly hand: PointerController; readonly store: HandStore },
): void {
  const stroke = keyPressOf(event);
  if (stroke.key === ' ') hand.setPanMode(true);
  const zoom =
    stroke.mod || stroke.alt
      ? undefined
      : ({ '+': ZOOM_STEP, '=': ZOOM_STEP, '-': 1 / ZOOM_STEP } as const)[stroke.key];
  if (isMenuKey(stroke)) openMenuAtChosen({ desk, view, hand: store });
  else if (zoom !== undefined) view.zoom(zoom);
  else if (stroke.key === '0' && !stroke.mod) view.fit();
  else if (stroke.key === 'g' && !stroke.mod && !stroke.alt && focusDimensions()) hand.setPanMode(false);
  else if (
    !desk.press(asSeen(stroke, view.state().camera.turned)) &&
    !CHECKS_PART.now()?.doors.findingKey({ desk, view }, stroke, 'arena') &&
    stroke.key !== ' '
  )
    return;
  event.preventDefault();
  event.stopPropagation();
}
