import { snapSuggestion } from '../constraints/constraint-suggestions.ts';
import type { Instruments, SnapDoing } from '../instruments.ts';
import { type SnapSource, snap } from '../snapping/snap.ts';
import { GROUP_TURN_SOURCES, PLACE_SOURCES, TURN_SOURCES } from '../snapping/snap-sources.ts';
import { tapeEndName, tapeEndsOf, tapeReading } from './measuring.ts';
import { tapeDown, tapeMoved, tapeUp } from './tape-pointer.ts';

const SOURCES: Readonly<Record<SnapDoing, readonly SnapSource[]>> = {
  place: PLACE_SOURCES,
  turn: TURN_SOURCES,
  'turn-together': GROUP_TURN_SOURCES,
};

/** All that measures and snaps at the desk. */
export const INSTRUMENTS: Instruments = {
  snap: (moving, ground, { doing, reach }) => snap(moving, ground, { sources: SOURCES[doing], reach }),
  snapSuggestion,
  tapeEndsOf,
  tapeEndName,
  tapeReading,
  tapeDown,
  tapeMoved,
  tapeUp,
};
