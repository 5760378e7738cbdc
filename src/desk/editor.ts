import type { Finding } from '../core/checks/check.ts';
import { findingsOf } from '../core/checks/checks.ts';
import type { Course } from '../core/course/course.ts';
import { type History, newHistory, presentCourse, redo, undo, withStep } from '../core/course/history.ts';
import { replaceLayout } from '../core/course/layouts.ts';
import { type Survey, survey } from '../core/survey.ts';
import {
  duplicatePlan,
  erasePlan,
  mirrorPlan,
  nudgePlan,
  type Plan,
  posePlan,
  turnPlan,
  valuePlan,
} from './commands/commands.ts';
import {
  dropPlan,
  holdPlan,
  keepPlan,
  measureOnlyPlan,
  type PendingConflict,
  resolveExistingPlan,
  resolvePendingPlan,
  setHoldPlan,
} from './constraints/constraint-edits.ts';
import { type KeepSuggestion, snapSuggestion } from './constraints/constraint-suggestions.ts';
import { pinPlan } from './constraints/pin.ts';
import type { Desk, DeskState, PointerInput, Refusal, Stage } from './desk.ts';
import { messages } from './desk-words.ts';
import type { Gesture } from './gestures/gesture.ts';
import { pressGesture } from './gestures/press.ts';
import { runShortcut } from './keyboard/shortcuts.ts';
import { type TapeReading, type TapeState, tapeEndName, tapeEndsOf, tapeReading } from './measuring/measuring.ts';
import { type TapePress, tapeDown, tapeMoved, tapeUp, validTape } from './measuring/tape-pointer.ts';
import { namesOf } from './names.ts';
import { placePlan } from './placing/add-obstacle.ts';
import { gatherPlan, placeFromShelfPlan } from './placing/custom-obstacles.ts';
import { existingKeys, type Keys } from './selection/selection.ts';

/** What the desk remembers; everything else is derived from it. */
interface DeskModel {
  readonly history: History;
  readonly chosen: Keys;
  readonly stage: Stage;
  readonly said: string;
  readonly gesture: Gesture | null;
  /** The key under which the last step may be joined by one like it; null when it may not. */
  readonly join: string | null;
  readonly measuring: TapeState | null;
  /** The finger that is down with the tape. */
  readonly press: TapePress | null;
  readonly offer: KeepSuggestion | null;
  readonly standoff: PendingConflict | null;
}

/** Nothing left of what went before. */
const CLEAR = { gesture: null, join: null, offer: null, standoff: null } as const;

function stateOf(model: DeskModel): DeskState {
  const { gesture, history } = model;
  const course = gesture?.course ?? presentCourse(history);
  let read: TapeReading | null | undefined;
  return {
    history,
    course,
    get survey(): Survey {
      return survey(course);
    },
    get findings(): readonly Finding[] {
      return findingsOf(survey(course));
    },
    chosen: gesture?.chosen ?? model.chosen,
    stage: model.stage,
    guides: gesture?.guides ?? [],
    gesture: gesture?.doing ?? null,
    said: gesture?.said ?? model.said,
    tape: model.measuring,
    get tapeReading(): TapeReading | null {
      read ??= model.measuring === null ? null : tapeReading(survey(course), model.measuring);
      return read;
    },
    suggestion: model.offer,
    pendingConflict: model.standoff,
  };
}

/** A desk with a course on it. */
export function createDesk(first: Course): Desk {
  let model: DeskModel = {
    history: newHistory(first),
    chosen: [],
    stage: 'set',
    said: messages.ready(),
    ...CLEAR,
    measuring: null,
    press: null,
  };
  let state = stateOf(model);
  const listeners = new Set<() => void>();
  const activePointers = new Set<number>();

  const change = (next: Partial<DeskModel>): void => {
    model = { ...model, ...next };
    state = stateOf(model);
    for (const listener of [...listeners]) listener();
  };

  /** The one place where a step is taken. */
  const apply = (plan: Plan): Refusal => {
    if ('refusal' in plan) {
      change({ said: plan.refusal, gesture: null });
      return plan.refusal;
    }
    if ('conflict' in plan) {
      change({ ...CLEAR, standoff: plan.conflict, said: plan.conflict.says });
      return messages.conflict();
    }
    const { course = presentCourse(model.history), chosen, label, said, join = null } = plan;
    const joins = join !== null && join === model.join;
    const history = withStep(joins ? undo(model.history) : model.history, course, label);
    const measuring = validTape(model.measuring, course);
    change({ ...CLEAR, history, chosen: existingKeys(chosen, course), said, join, measuring });
    return undefined;
  };

  const cancel = (): boolean => {
    if (model.gesture === null) return false;
    change({ gesture: null, said: messages.cancelled() });
    return true;
  };

  /** A verb meets the desk at rest: a gesture under way is let go of first. */
  const atRest = (): DeskState => {
    cancel();
    return state;
  };

  const down = (input: PointerInput): void => {
    const alone = activePointers.size === 0;
    activePointers.add(input.pointerId);
    const { measuring, press } = model;
    if (measuring !== null) {
      if (alone) change({ offer: null, ...tapeDown(measuring, state.survey, input) });
      else change({ measuring: press?.before ?? measuring, press: null });
      return;
    }
    // A second finger is a pinch: the drag is forgotten, and nothing starts until all fingers are up.
    if (alone) change({ gesture: pressGesture(input, atRest()), offer: null });
    else cancel();
  };

  const moved = (input: PointerInput): void => {
    const { gesture, measuring, press } = model;
    if (measuring !== null && (press === null ? activePointers.size === 0 : activePointers.has(input.pointerId))) {
      const next = tapeMoved(measuring, state.survey, input, press);
      if (next !== measuring) change({ measuring: next });
    }
    if (gesture === null || !activePointers.has(input.pointerId)) return;
    const next = gesture.moved(input);
    if (next !== gesture) change({ gesture: next });
  };

  /** The tape is down at both ends: what it reads is said, and offered to be kept. */
  const layTape = (measuring: TapeState): void => {
    const read = tapeReading(state.survey, measuring);
    const { from } = measuring;
    const said =
      read?.says ?? (from === null ? messages.tapeInHand() : messages.tapeHeld(tapeEndName(state.survey, from)));
    change({ measuring, press: null, said, offer: read?.suggestion ?? null });
  };

  const up = (input: PointerInput): void => {
    if (!activePointers.delete(input.pointerId)) return;
    if (model.measuring !== null && model.press !== null) {
      const last = tapeMoved(model.measuring, state.survey, input, model.press);
      layTape(tapeUp(last, state.survey));
      return;
    }
    if (model.gesture === null) return;
    // What is let go of is what would have been shown here: the same result for preview and commit.
    const last = model.gesture.moved(input);
    const { history } = model;
    apply(last.commit());
    const snaps = last.guides.flatMap(({ snap }) => (snap === undefined ? [] : [snap]));
    if (model.history === history || snaps.length === 0) return;
    change({ offer: snapSuggestion(state.survey, state.chosen, snaps) });
  };

  /** A finger that is taken away: what it began is forgotten. */
  const pointerLost = (input: PointerInput): void => {
    if (!activePointers.delete(input.pointerId)) return;
    const { press } = model;
    if (press !== null) change({ measuring: press.before, press: null });
    cancel();
  };

  const restore = (to: History, said: string): void => {
    const course = presentCourse(to);
    const measuring = validTape(model.measuring, course);
    change({ ...CLEAR, history: to, chosen: existingKeys(model.chosen, course), said, measuring });
  };

  const desk: Desk = {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    pointer: (input) => {
      if (input.phase === 'down') down(input);
      else if (input.phase === 'move') moved(input);
      else if (input.phase === 'up') up(input);
      else pointerLost(input);
    },
    cancel,
    press: (stroke) => runShortcut(desk, stroke),
    open: (course) => {
      activePointers.clear();
      const said = messages.opened(course.title);
      change({ ...CLEAR, history: newHistory(course), chosen: [], said, measuring: null, press: null });
    },
    undo: () => {
      // A drag under way is the last thing that was done: it is what undo takes back.
      if (cancel()) return;
      const { history } = model;
      const back = undo(history);
      const label = history.steps[history.present]?.label ?? '';
      if (back === history) change({ said: messages.nothingToUndo() });
      else restore(back, messages.undone(label));
    },
    redo: () => {
      if (cancel()) return;
      const on = redo(model.history);
      if (on === model.history) change({ said: messages.nothingToRedo() });
      else restore(on, messages.redone(on.steps[on.present]?.label ?? ''));
    },
    choose: (keys) => {
      const { course, survey: now } = atRest();
      const chosen = existingKeys(keys, course);
      const said = chosen.length === 0 ? messages.choseNothing() : messages.chose(namesOf(now, chosen));
      change({ chosen, said, offer: null });
    },
    switchStage: (stage) => {
      atRest();
      change({ stage, said: messages.stage(stage), measuring: null, press: null, offer: null });
    },
    place: (kind, values, at) => apply(placePlan(atRest(), { kind, values, at })),
    erase: () => void apply(erasePlan(atRest())),
    duplicate: () => void apply(duplicatePlan(atRest())),
    mirror: () => void apply(mirrorPlan(atRest())),
    turn: (by) => void apply(turnPlan(atRest(), by)),
    nudge: (dx, dy) => void apply(nudgePlan(atRest(), dx, dy)),
    setValue: (obstacle, param, text) => apply(valuePlan(atRest(), { obstacle, param, text })),
    setPose: (key, field, text) => apply(posePlan(atRest(), { key, field, text })),
    setHold: (keys, text) => apply(setHoldPlan(atRest(), keys, text)),
    hold: (keys) => void apply(holdPlan(atRest(), keys)),
    measureOnly: (keys) => void apply(measureOnlyPlan(atRest(), keys)),
    drop: (keys) => void apply(dropPlan(atRest(), keys)),
    keep: (offer) => {
      const now = offer ?? atRest().suggestion;
      return now === null ? undefined : apply(keepPlan(atRest(), now.draft, now.says));
    },
    dismiss: () => change({ offer: null }),
    resolve: (offer) => {
      const { pendingConflict } = atRest();
      if (offer === undefined) change({ standoff: null, said: messages.leftAsItWas() });
      else
        apply(
          pendingConflict === null
            ? resolveExistingPlan(state, offer)
            : resolvePendingPlan(state, pendingConflict, offer),
        );
    },
    togglePinned: () => apply(pinPlan(atRest())) === undefined,
    measure: () => {
      const { tape: measuring, survey: now, chosen } = atRest();
      if (measuring === null) layTape(tapeEndsOf(now, chosen));
      else change({ measuring: null, press: null, offer: null, said: messages.tapeAway() });
    },
    gather: () => apply(gatherPlan(atRest())),
    placeFromShelf: (kept, at) => apply(placeFromShelfPlan(atRest(), kept, at)),
    edit: (label, edit) => {
      const { course, chosen } = atRest();
      apply({ course: edit(course), chosen, label, said: label });
    },
    editLayout: (label, edit) => desk.edit(label, (course) => replaceLayout(course, edit)),
  };
  return desk;
}
