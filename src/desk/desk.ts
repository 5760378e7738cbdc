/**
 * desk/ is the headless editor: what a pointer, a key or a typed number does to a course. It knows neither React nor
 * Konva nor the DOM. One place applies every edit, and a preview is the same result as the commit; only the ways that the
 * designer left open wait until a gesture is let go, because to choose them takes longer than a pointer move.
 */

import type { Band, Finding } from '../core/checks/check.ts';
import type { Resolution } from '../core/course/conflict.ts';
import type { Arena, Course, Layout } from '../core/course/course.ts';
import type { History } from '../core/course/history.ts';
import type { Gait } from '../core/horses/horse.ts';
import type { Obstacle } from '../core/obstacles/obstacle.ts';
import type { Values } from '../core/pieces/params.ts';
import type { Point } from '../core/plane/point.ts';
import type { Pose } from '../core/plane/pose.ts';
import type { Survey } from '../core/survey.ts';
import type { KeepSuggestion, PendingConflict } from './constraints/pending.ts';
import type { KeyPress, PointerInput, Refusal, Stage } from './input.ts';
import type { Instruments } from './instruments.ts';
import type { TapeReading, TapeState } from './measuring/tape.ts';
import type { PendingQuestion } from './plan.ts';
import type { Guide } from './snapping/guide.ts';

/**
 * The checks and the limits of the rule books, as the desk asks them: the module `core/checks/checks.ts` is one. They are
 * half of the program, so that a page may show a course before they are there.
 */
export interface Checker {
  findingsOf(survey: Survey): readonly Finding[];
  /** Without those that a pointer move has no time for. */
  dragFindingsOf(survey: Survey): readonly Finding[];
  /** With those that look hoof by hoof. */
  closerFindingsOf(survey: Survey): readonly Finding[];
  /** What is asked for under the name of a limit, SI; undefined where nobody asks. */
  bandAsked(course: Course, limit: string): Band | undefined;
}

export interface DeskState {
  readonly history: History;
  /** The course: the history's present, or the preview of a gesture. */
  readonly course: Course;
  /** Of `course`. */
  readonly survey: Survey;
  /** None for as long as there is no checker. */
  readonly findings: readonly Finding[];
  /** The same with a closer look, while there is no gesture. */
  readonly closerFindings: readonly Finding[];
  /** False for as long as there is no checker: that nothing is found then means nothing. */
  readonly isChecked: boolean;
  /** What is asked for under the name of a limit, SI; undefined where nobody asks, and for as long as there is no checker. */
  bandAsked(limit: string): Band | undefined;
  /** Null for as long as there are none: nothing snaps then. */
  readonly instruments: Instruments | null;
  /** Keys: `fan-1` an obstacle, `fan-1/pole-2` one of its pieces, `bend:leg-3:0` a bend, `ride:start` the start. */
  readonly chosen: readonly string[];
  readonly stage: Stage;
  readonly guides: readonly Guide[];
  /** What the gesture is doing: "Moving Fan"; null at rest. */
  readonly gesture: string | null;
  /** The last thing that happened, for the status line and the screen reader. */
  readonly said: string;
  /** The tape and what it reads; null when it is put away, or has one end only. */
  readonly tape: TapeState | null;
  readonly tapeReading: TapeReading | null;
  /** A constraint suggested after a snap or by the tape. */
  readonly suggestion: KeepSuggestion | null;
  /** Snapping is switched on. */
  readonly snaps: boolean;
  /** What moves along with the one piece that is chosen, or did in the last drag; null: it is free of others. */
  readonly along: string | null;
  /** The piece that is chosen moves alone: what holds it to others gives way. */
  readonly isAlone: boolean;
  /** The last step was a drag that took others along; `toggleAlone` does it again for the one piece. */
  readonly canRedoAlone: boolean;
  /** A conflict: what was asked for, and the constraints of which one must go first. */
  readonly pendingConflict: PendingConflict | null;
  /** A change that would lose something set by hand, and waits for an answer. */
  readonly pendingQuestion: PendingQuestion | null;
}

export interface Desk {
  state(): DeskState;
  /** Calls back after each change; returns how to unsubscribe. */
  subscribe(listener: () => void): () => void;

  pointer(input: PointerInput): void;
  /** Cancels the gesture and leaves everything as it was before; true when there was one. */
  cancel(): boolean;
  /** True when the key press meant something here. */
  press(stroke: KeyPress): boolean;

  /** Checks the course from now on, this one and those that are opened later. */
  takeChecker(checker: Checker): void;
  /** Snaps and measures from now on. */
  takeInstruments(instruments: Instruments): void;

  /** Opens another course, with a history of its own. */
  open(course: Course): void;
  /** Takes a longer history with the same present course in place of the one there is. */
  lengthen(history: History): void;
  undo(): void;
  redo(): void;
  choose(keys: readonly string[]): void;
  switchStage(stage: Stage): void;

  /** Builds an obstacle, places it, adds it to the end of the ride, and chooses it. */
  place(kind: string, values: Values, at: Point): Refusal;
  erase(): void;
  duplicate(): void;
  mirror(): void;
  /** Turns what is chosen about its middle. */
  turn(by: number): void;
  /** Moves what is chosen. */
  nudge(dx: number, dy: number): void;

  /** Types a parameter of an obstacle, as people write it: `6' 3"`. */
  setValue(obstacle: string, param: string, text: string): Refusal;
  /** Sets the gait over an obstacle in one leg; of an obstacle that is ridden once it is the obstacle's own gait. */
  setGait(leg: string, gait: Gait): Refusal;
  /** Types where the frame of what is chosen lies. */
  setPose(key: string, field: keyof Pose, text: string): Refusal;
  /** Types the value of constraints, by key: pieces that are not fixed are moved to it. */
  setHold(keys: readonly string[], text: string): Refusal;
  /** Makes constraints driving at their present values; makes them reference dimensions; removes them. */
  hold(keys: readonly string[]): void;
  measureOnly(keys: readonly string[]): void;
  drop(keys: readonly string[]): void;
  /** Adds a suggested constraint; without an argument, the last one suggested. */
  keep(suggestion?: KeepSuggestion): Refusal;
  /** Dismisses the last suggestion. */
  dismiss(): void;
  /**
   * Applies a resolution of a pending conflict, or of one that the course had already; without one everything is left
   * as it was.
   */
  resolve(resolution?: Resolution): void;
  /** Answers the question that waits: makes the change, or leaves everything as it was. */
  answer(yes: boolean): void;
  /** Fixes the pieces that are chosen, or frees them when all are fixed; false when there are none. */
  togglePinned(): boolean;
  /** Switches snapping on or off. */
  toggleSnaps(): void;
  /**
   * Whether the one piece that is chosen moves alone, from now on or not; during a drag at once, and right after one that
   * took others along the drag is done again with just this piece. False when no single piece is chosen.
   */
  toggleAlone(): boolean;
  /** Changes the arena; the way in and the ends of the go that lie at it move with its wall. */
  changeArena(next: Partial<Arena>): void;
  /** Turns the tape on, laid between two things that are chosen, or off. Without instruments it says so. */
  measure(): void;

  /** Makes one obstacle of all that is chosen, where it lies. */
  gather(): Refusal;
  /** Places an obstacle that was kept. */
  placeFromShelf(stored: Obstacle, at: Point): Refusal;

  /** Applies any other pure edit under a label in the history. */
  edit(label: string, change: (course: Course) => Course): void;
  editLayout(label: string, change: (layout: Layout) => Layout): void;
}
