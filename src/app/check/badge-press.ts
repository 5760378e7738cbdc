import type { Point } from '../../core/plane/point.ts';
import type { PointerController, PointerSample } from '../arena/input/pointer-controller.ts';
import { badgeAt } from '../arena/painters/badges.ts';
import { type DoorPlaces, enterFinding } from './finding-doors.ts';
import { visibleFindings } from './visible-findings.ts';

/** A press that wanders further than this is no press, pixels. */
const WANDER = 12;

/** A browser that makes no click of a tap makes none for so long, milliseconds. */
const CLICK_WAIT = 400;

/** Runs when a tap is over: the browser ends it with the mouse events of a click, and with them moves the focus. */
function afterTap(run: () => void): void {
  const over = () => {
    clearTimeout(wait);
    window.removeEventListener('click', over, true);
    run();
  };
  const wait = setTimeout(over, CLICK_WAIT);
  window.addEventListener('click', over, true);
}

/** Puts the badges in front of the arena's pointers: one that is pressed opens its findings and moves nothing beneath. */
export function createBadgePress(places: DoorPlaces, arena: PointerController): PointerController {
  let press: { readonly pointer: number; readonly at: Point<'screen'>; readonly finding: string } | null = null;
  const findingAt = (sample: PointerSample): string | undefined => {
    const { desk, view } = places;
    if (sample.button !== 0 || sample.shift || desk.state().tape !== null) return undefined;
    const pointer = sample.kind === 'touch' ? 'finger' : 'mouse';
    return badgeAt(visibleFindings(desk.state()), view.state().camera, sample.at, pointer)[0];
  };
  return {
    setPanMode: arena.setPanMode,
    down(sample) {
      const finding = findingAt(sample);
      if (press === null && finding !== undefined) press = { pointer: sample.id, at: sample.at, finding };
      else arena.down(sample);
    },
    move(sample) {
      if (press?.pointer !== sample.id) arena.move(sample);
    },
    up(sample) {
      if (press?.pointer !== sample.id) return arena.up(sample);
      const { at, finding } = press;
      press = null;
      if (Math.hypot(sample.at.x - at.x, sample.at.y - at.y) > WANDER) return;
      if (sample.kind === 'touch') afterTap(() => enterFinding(places, finding));
      else enterFinding(places, finding);
    },
    cancel(sample) {
      if (press?.pointer === sample.id) press = null;
      else arena.cancel(sample);
    },
  };
}
