import type { PointerController, PointerSample } from '../arena/input/pointer-controller.ts';
import { badgeAt } from '../arena/painters/badges.ts';
import type { DoorPlaces } from './finding-doors.ts';
import { CHECKS_PART } from './later-checks.ts';
import { visibleFindings } from './visible-findings.ts';

/** A press that wanders further than this is a drag, pixels. */
const WANDER = 12;

/** A finger whose end is not reported as a touch as well is waited for so long, milliseconds. */
const TOUCH_WAIT = 400;

/** Runs when a tap is over. The arena has taken its end by then: no mouse events follow that would move the focus. */
function afterTap(run: () => void): void {
  const over = () => {
    clearTimeout(wait);
    window.removeEventListener('touchend', over);
    run();
  };
  const wait = setTimeout(over, TOUCH_WAIT);
  window.addEventListener('touchend', over);
}

/**
 * Puts the badges in front of the arena's pointers: one that is pressed opens its findings. A drag or a pinch that begins on
 * one is the arena's, since a badge may cover all of what a hand means to move.
 */
export function createBadgePress(places: DoorPlaces, arena: PointerController): PointerController {
  let press: { readonly began: PointerSample; readonly finding: string } | null = null;
  /** Pointers that the arena has. */
  const inArena = new Set<number>();
  const sendDown = (sample: PointerSample) => {
    inArena.add(sample.id);
    arena.down(sample);
  };
  const findingAt = (sample: PointerSample): string | undefined => {
    const { desk, view } = places;
    if (sample.button !== 0 || sample.shift || desk.state().tape !== null) return undefined;
    const pointer = sample.kind === 'touch' ? 'finger' : 'mouse';
    return badgeAt(visibleFindings(desk.state()), view.state().camera, sample.at, pointer)[0];
  };
  const isOurs = (sample: PointerSample): boolean => press?.began.id === sample.id;
  const hasWandered = ({ at }: PointerSample): boolean =>
    press !== null && Math.hypot(at.x - press.began.at.x, at.y - press.began.at.y) > WANDER;
  const handOver = () => {
    if (press === null) return;
    const { began } = press;
    press = null;
    sendDown(began);
  };
  return {
    setPanMode: arena.setPanMode,
    down(sample) {
      const finding = press === null && inArena.size === 0 ? findingAt(sample) : undefined;
      if (finding !== undefined) {
        press = { began: sample, finding };
        return;
      }
      handOver();
      sendDown(sample);
    },
    move(sample) {
      if (isOurs(sample)) {
        if (!hasWandered(sample)) return;
        handOver();
      }
      arena.move(sample);
    },
    up(sample) {
      // A quick hand may let go far away without a move in between.
      if (isOurs(sample) && hasWandered(sample)) handOver();
      if (press === null || !isOurs(sample)) {
        inArena.delete(sample.id);
        return arena.up(sample);
      }
      const { finding } = press;
      press = null;
      const enter = () => CHECKS_PART.now()?.doors.enterFinding(places, finding);
      if (sample.kind === 'touch') afterTap(enter);
      else enter();
    },
    cancel(sample) {
      inArena.delete(sample.id);
      if (isOurs(sample)) press = null;
      else arena.cancel(sample);
    },
  };
}
