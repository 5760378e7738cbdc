import type { Survey } from '../core/survey.ts';
import type { KeepSuggestion } from './constraints/pending.ts';
import type { PointerInput } from './input.ts';
import type { TapePress, TapeReading, TapeState } from './measuring/tape.ts';
import type { Keys } from './selection/selection.ts';
import type { Snap } from './snapping/guide.ts';
import type { SnapContext, SnapRange, SnapResult, SnapSubject } from './snapping/snap.ts';

/** What is done with the things that snap: they are put somewhere, one is turned, several are turned together. */
export type SnapDoing = 'place' | 'turn' | 'turn-together';

/**
 * Snapping, the tape, and what either suggests to keep: `measuring/all-instruments.ts` has them. A desk can do without them,
 * so that a page may show a course, and move things in it, before they are there.
 */
export interface Instruments {
  /** The shift to add to what was asked, and the guides of the snaps that hold. */
  snap(
    moving: SnapSubject,
    ground: SnapContext,
    options: { readonly doing: SnapDoing; readonly reach: SnapRange },
  ): SnapResult;
  /** What could be kept of the snaps that a drag ended with; null: nothing. */
  snapSuggestion(survey: Survey, chosen: Keys, snaps: readonly Snap[]): KeepSuggestion | null;
  /** The tape laid between two things that are chosen; else with one end, or with none. */
  tapeEndsOf(survey: Survey, chosen: Keys): TapeState;
  /** What an end of the tape is held to, in words. */
  tapeEndName(survey: Survey, end: NonNullable<TapeState['from']>): string;
  /** What a tape with two ends reads; null with fewer. */
  tapeReading(survey: Survey, tape: TapeState): TapeReading | null;
  /** The tape after each phase of a pointer; the same object when nothing changes. */
  tapeDown(
    tape: TapeState,
    survey: Survey,
    input: PointerInput,
  ): { readonly tape: TapeState; readonly tapePress: TapePress };
  tapeMoved(tape: TapeState, survey: Survey, input: PointerInput, press: TapePress | null): TapeState;
  tapeUp(tape: TapeState, survey: Survey): TapeState;
}
