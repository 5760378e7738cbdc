/** What the desk stores, and the state that is derived from it. Everything else in desk/ is a function of these two. */

import { createStore } from 'zustand/vanilla';
import type { Finding } from '../core/checks/check.ts';
import { type Course, currentLayout } from '../core/course/course.ts';
import { type History, newHistory, presentCourse } from '../core/course/history.ts';
import { pieceOf } from '../core/course/ids.ts';
import type { Pose } from '../core/plane/pose.ts';
import { dragSurvey, type Survey, survey } from '../core/survey.ts';
import { messages } from '../words/desk.ts';
import type { KeepSuggestion, PendingConflict } from './constraints/pending.ts';
import { alongWords, piecesHeldTo } from './constraints/piece-alone.ts';
import type { Checker, DeskState } from './desk.ts';
import type { Gesture } from './gestures/gesture.ts';
import type { Stage } from './input.ts';
import type { Instruments } from './instruments.ts';
import type { TapePress, TapeReading, TapeState } from './measuring/tape.ts';
import type { PendingQuestion } from './plan.ts';
import type { Keys } from './selection/selection.ts';

/** What the desk stores. */
export interface DeskModel {
  readonly history: History;
  readonly chosen: Keys;
  readonly stage: Stage;
  readonly said: string;
  readonly gesture: Gesture | null;
  /** The key under which the next step may join the last one in the history; null when it may not. */
  readonly join: string | null;
  readonly tape: TapeState | null;
  /** The pointer that is down while the tape is in the hand. */
  readonly tapePress: TapePress | null;
  readonly suggestion: KeepSuggestion | null;
  /** Snapping is switched on. */
  readonly snaps: boolean;
  /** The piece that moves alone while it is the one that is chosen; null: what is kept holds. */
  readonly alone: string | null;
  /** The piece that was dragged last and took others along, and where to; null after anything else. */
  readonly again: { readonly key: string; readonly pose: Pose } | null;
  readonly pendingConflict: PendingConflict | null;
  readonly pendingQuestion: PendingQuestion | null;
  readonly checker: Checker | null;
  readonly instruments: Instruments | null;
}

/** What ends with each step: a gesture, a suggestion, a conflict that waits. */
export const NOTHING_PENDING = {
  gesture: null,
  join: null,
  suggestion: null,
  again: null,
  pendingConflict: null,
  pendingQuestion: null,
} as const;

/** The stored model and the state derived from it, which change together. */
export interface DeskStore {
  model(): DeskModel;
  state(): DeskState;
  /** Replaces parts of the model; listeners are called afterwards. */
  change(next: Partial<DeskModel>): void;
  /** Calls back after each change; returns how to stop. */
  subscribe(listener: () => void): () => void;
}

/** The last survey that was read. During a gesture the next one keeps the sides of its ways. */
interface LastSurvey {
  survey: Survey | null;
}

const NO_FINDINGS: readonly Finding[] = [];

/** The state of a model. What costs time (survey, findings, the tape's reading) is worked out when it is first read. */
function stateOf(model: DeskModel, last: LastSurvey): DeskState {
  const { gesture, history, checker, instruments } = model;
  const course = gesture?.course ?? presentCourse(history);
  const chosen = gesture?.chosen ?? model.chosen;
  let read: TapeReading | null | undefined;
  let surveyed: Survey | undefined;
  const currentSurvey = (): Survey => {
    surveyed ??= gesture === null ? survey(course) : dragSurvey(course, last.survey ?? survey(presentCourse(history)));
    last.survey = surveyed;
    return surveyed;
  };
  return {
    history,
    course,
    get survey(): Survey {
      return currentSurvey();
    },
    get findings(): readonly Finding[] {
      if (checker === null) return NO_FINDINGS;
      return gesture === null ? checker.findingsOf(currentSurvey()) : checker.dragFindingsOf(currentSurvey());
    },
    get closerFindings(): readonly Finding[] {
      if (checker === null) return NO_FINDINGS;
      return gesture === null ? checker.closerFindingsOf(currentSurvey()) : checker.dragFindingsOf(currentSurvey());
    },
    isChecked: checker !== null,
    instruments,
    bandAsked: (limit) => checker?.bandAsked(course, limit),
    chosen,
    stage: model.stage,
    guides: gesture?.guides ?? [],
    gesture: gesture?.doing ?? null,
    said: gesture?.said ?? model.said,
    tape: model.tape,
    get tapeReading(): TapeReading | null {
      read ??= model.tape === null ? null : (instruments?.tapeReading(currentSurvey(), model.tape) ?? null);
      return read;
    },
    suggestion: model.suggestion,
    snaps: model.snaps,
    isAlone: model.alone !== null && chosen.length === 1 && chosen[0] === model.alone,
    canRedoAlone: model.again !== null,
    get along(): string | null {
      if (gesture !== null) return gesture.along ?? null;
      const [only, more] = chosen;
      if (only === undefined || more !== undefined || pieceOf(only) === undefined) return null;
      return alongWords(course, only, piecesHeldTo(currentLayout(course), only));
    },
    pendingConflict: model.pendingConflict,
    pendingQuestion: model.pendingQuestion,
  };
}

/** A store for a desk on which this course lies, at the first stage and with nothing chosen. */
export function createDeskStore(first: Course, checker: Checker | null): DeskStore {
  const model: DeskModel = {
    history: newHistory(first),
    chosen: [],
    stage: 'set',
    said: messages.ready(),
    ...NOTHING_PENDING,
    tape: null,
    tapePress: null,
    snaps: true,
    alone: null,
    checker,
    instruments: null,
  };
  const last: LastSurvey = { survey: null };
  const store = createStore<{ readonly model: DeskModel; readonly state: DeskState }>()(() => ({
    model,
    state: stateOf(model, last),
  }));
  return {
    model: () => store.getState().model,
    state: () => store.getState().state,
    change(next) {
      const changed = { ...store.getState().model, ...next };
      store.setState({ model: changed, state: stateOf(changed, last) });
    },
    subscribe: (listener) => store.subscribe(() => listener()),
  };
}
