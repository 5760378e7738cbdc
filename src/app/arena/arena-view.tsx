import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef } from 'react';
import type { Desk } from '../../desk/desk.ts';
import { lookedAt } from '../check/visible-findings.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { strokeOf } from '../key-press.ts';
import { useView, useViewState, type View } from '../view.ts';
import { createHand, type Finger, type Hand } from './input/pointer-controller.ts';
import { pointedAt } from './input/pointing.ts';
import { HorseLayer } from './layers/horse-layer.tsx';
import { Layers } from './layers/layers.tsx';
import { StandoffDialog } from './overlays/conflict-dialog.tsx';
import { focusTapes, TapeLabels } from './overlays/dimension-labels.tsx';
import { Tells } from './overlays/hint-line.tsx';
import { Legend } from './overlays/legend.tsx';
import { Offer } from './overlays/suggestion-bar.tsx';
import { Mirror } from './overlays/text-alternative.tsx';
import { ViewButtons } from './overlays/view-buttons.tsx';

const PIXELS_A_LINE = 16;
const ZOOM_STEP = 1.25;

/** The arena: one focusable drawing. Everything that is done to it goes through the desk, in metres. */
export function ArenaStage() {
  const desk = useDesk();
  const view = useView();
  const camera = useViewState((state) => state.camera);
  const gesture = useDeskState((state) => state.gesture);
  const arena = useDeskState((state) => state.course.arena);
  const stage = useDeskState((state) => state.stage);
  const box = useRef<HTMLDivElement>(null);
  const hand = useMemo(() => handOver(desk, view), [desk, view]);

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

  const pointer = (tell: (finger: Finger) => void) => (event: PointerEvent<HTMLDivElement>) => tell(fingerOf(event));
  const down = (event: PointerEvent<HTMLDivElement>) => {
    // Jumping to the focus would scroll a phone's page away under the finger.
    event.currentTarget.focus({ preventScroll: true });
    event.currentTarget.setPointerCapture(event.pointerId);
    if (event.button === 1) event.preventDefault();
    view.point(null);
    hand.down(fingerOf(event));
  };
  const move = (event: PointerEvent<HTMLDivElement>) => {
    const finger = fingerOf(event);
    hand.move(finger);
    if (event.buttons !== 0 || event.pointerType === 'touch') return;
    const state = desk.state();
    const findings = lookedAt(state);
    view.point(pointedAt(finger.at, { survey: state.survey, findings, camera: view.state().camera }));
  };
  return (
    <div className="arena">
      <div
        ref={box}
        className={gesture === null ? 'arena-ground' : 'arena-ground is-busy'}
        role="application"
        aria-label="Arena, seen from above"
        aria-describedby="arena-keys arena-contents"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the arena takes key strokes.
        tabIndex={0}
        data-scale={camera.scale}
        data-origin={`${camera.x} ${camera.y}`}
        data-turned={camera.turned}
        onPointerDown={down}
        onPointerMove={move}
        onPointerLeave={() => view.point(null)}
        onPointerUp={pointer(hand.up)}
        onPointerCancel={pointer(hand.cancel)}
        onContextMenu={(event) => event.preventDefault()}
        onKeyDown={(event) => stroked(event, { desk, view, hand })}
        onKeyUp={(event) => event.key === ' ' && hand.hold(false)}
        onBlur={() => hand.hold(false)}
      >
        <Layers />
        {stage === 'ride' && <HorseLayer />}
      </div>
      <Mirror />
      <TapeLabels />
      <div className="arena-head">
        <Tells />
        <Offer />
      </div>
      <StandoffDialog />
      <Legend />
      <ViewButtons />
    </div>
  );
}

function handOver(desk: Desk, view: View): Hand {
  return createHand({
    camera: () => view.state().camera,
    touch: (touch) => desk.touch(touch),
    pan: view.pan,
    zoom: view.zoom,
  });
}

function fingerOf(event: PointerEvent<HTMLDivElement>): Finger {
  const box = event.currentTarget.getBoundingClientRect();
  return {
    id: event.pointerId,
    kind: event.pointerType,
    at: { x: event.clientX - box.left, y: event.clientY - box.top },
    button: event.button,
    shift: event.shiftKey,
    alt: event.altKey,
  };
}

function stroked(
  event: KeyboardEvent<HTMLDivElement>,
  { desk, view, hand }: { readonly desk: Desk; readonly view: View; readonly hand: Hand },
): void {
  const stroke = strokeOf(event);
  if (stroke.key === ' ') hand.hold(true);
  const zoom =
    stroke.mod || stroke.alt
      ? undefined
      : ({ '+': ZOOM_STEP, '=': ZOOM_STEP, '-': 1 / ZOOM_STEP } as const)[stroke.key];
  if (zoom !== undefined) view.zoom(zoom);
  else if (stroke.key === '0' && !stroke.mod) view.fit();
  else if (stroke.key === 'g' && !stroke.mod && !stroke.alt && focusTapes()) hand.hold(false);
  else if (!desk.press(stroke) && stroke.key !== ' ') return;
  event.preventDefault();
  event.stopPropagation();
}

/** React listens to the wheel passively; a picture that zooms must keep the page from scrolling. */
function useWheel(box: { readonly current: HTMLDivElement | null }, view: View): void {
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      const unit = event.deltaMode === 1 ? PIXELS_A_LINE : 1;
      if (event.shiftKey || (event.deltaX !== 0 && !event.ctrlKey)) {
        const sideways = event.shiftKey && event.deltaX === 0;
        view.pan(-unit * (sideways ? event.deltaY : event.deltaX), sideways ? 0 : -unit * event.deltaY);
        return;
      }
      const frame = element.getBoundingClientRect();
      const speed = event.ctrlKey ? 0.01 : 0.0016;
      const factor = Math.exp(-Math.max(-240, Math.min(240, event.deltaY * unit)) * speed);
      view.zoom(factor, { x: event.clientX - frame.left, y: event.clientY - frame.top });
    };
    element.addEventListener('wheel', wheel, { passive: false });
    return () => element.removeEventListener('wheel', wheel);
  }, [box, view]);
}
