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
  loosenPlan,
  resolvedPlan,
  type Standoff,
  takenPlan,
  typedPlan,
} from './constraints/constraint-edits.ts';
import { type KeepOffer, snapOffer } from './constraints/constraint-suggestions.ts';
import { fixPlan } from './constraints/pin.ts';
import type { Desk, DeskState, Refusal, Stage, Touch } from './desk.ts';
import { words } from './desk-words.ts';
import type { Gesture } from './gestures/gesture.ts';
import { pressGesture } from './gestures/press.ts';
import { pressed } from './keyboard/shortcuts.ts';
import { type Measured, type Measuring, measuredBy, tapeEndName, tapeEndsOf } from './measuring/measuring.ts';
import { type TapePress, tapeDown, tapeMoved, tapeStill, tapeUp } from './measuring/tape-pointer.ts';
import { namesOf } from './names.ts';
import { placePlan } from './placing/add-obstacle.ts';
import { gatherPlan, layPlan } from './placing/custom-obstacles.ts';
import { type Keys, stillThere } from './selection/selection.ts';

/** What the desk remembers; everything else is derived from it. */
interface Memory {
  readonly history: History;
  readonly chosen: Keys;
  readonly stage: Stage;
  readonly said: string;
  readonly gesture: Gesture | null;
  /** The key under which the last step may be joined by one like it; null when it may not. */
  readonly join: string | null;
  readonly measuring: Measuring | null;
  /** The finger that is down with the tape. */
  readonly press: TapePress | null;
  readonly offer: KeepOffer | null;
  readonly standoff: Standoff | null;
}

/** Nothing left of what went before. */
const CLEAR = { gesture: null, join: null, offer: null, standoff: null } as const;

function stateOf(memory: Memory): DeskState {
  const { gesture, history } = memory;
  const course = gesture?.course ?? presentCourse(history);
  let read: Measured | null | undefined;
  return {
    history,
    course,
    get survey(): Survey {
      return survey(course);
    },
    get findings(): readonly Finding[] {
      return findingsOf(survey(course));
    },
    chosen: gesture?.chosen ?? memory.chosen,
    stage: memory.stage,
    guides: gesture?.guides ?? [],
    gesture: gesture?.doing ?? null,
    said: gesture?.said ?? memory.said,
    measuring: memory.measuring,
    get measured(): Measured | null {
      read ??= memory.measuring === null ? null : measuredBy(survey(course), memory.measuring);
      return read;
    },
    offer: memory.offer,
    standoff: memory.standoff,
  };
}

/** A desk with a course on it. */
export function createDesk(first: Course): Desk {
  let memory: Memory = {
    history: newHistory(first),
    chosen: [],
    stage: 'set',
    said: words.ready(),
    ...CLEAR,
    measuring: null,
    press: null,
  };
  let state = stateOf(memory);
  const hearers = new Set<() => void>();
  const fingers = new Set<number>();

  const change = (next: Partial<Memory>): void => {
    memory = { ...memory, ...next };
    state = stateOf(memory);
    for (const heard of [...hearers]) heard();
  };

  /** The one place where a step is taken. */
  const carryOut = (plan: Plan): Refusal => {
    if ('refused' in plan) {
      change({ said: plan.refused, gesture: null });
      return plan.refused;
    }
    if ('standoff' in plan) {
      change({ ...CLEAR, standoff: plan.standoff, said: plan.standoff.says });
      return words.standoff();
    }
    const { course = presentCourse(memory.history), chosen, label, said, join = null } = plan;
    const joins = join !== null && join === memory.join;
    const history = withStep(joins ? undo(memory.history) : memory.history, course, label);
    const measuring = tapeStill(memory.measuring, course);
    change({ ...CLEAR, history, chosen: stillThere(chosen, course), said, join, measuring });
    return undefined;
  };

  const cancel = (): boolean => {
    if (memory.gesture === null) return false;
    change({ gesture: null, said: words.cancelled() });
    return true;
  };

  /** A verb meets the desk at rest: a gesture under way is let go of first. */
  const atRest = (): DeskState => {
    cancel();
    return state;
  };

  const down = (touch: Touch): void => {
    const alone = fingers.size === 0;
    fingers.add(touch.pointer);
    const { measuring, press } = memory;
    if (measuring !== null) {
      if (alone) change({ offer: null, ...tapeDown(measuring, state.survey, touch) });
      else change({ measuring: press?.before ?? measuring, press: null });
      return;
    }
    // A second finger is a pinch: the drag is forgotten, and nothing starts until all fingers are up.
    if (alone) change({ gesture: pressGesture(touch, atRest()), offer: null });
    else cancel();
  };

  const moved = (touch: Touch): void => {
    const { gesture, measuring, press } = memory;
    if (measuring !== null && (press === null ? fingers.size === 0 : fingers.has(touch.pointer))) {
      const next = tapeMoved(measuring, state.survey, touch, press);
      if (next !== measuring) change({ measuring: next });
    }
    if (gesture === null || !fingers.has(touch.pointer)) return;
    const next = gesture.moved(touch);
    if (next !== gesture) change({ gesture: next });
  };

  /** The tape is down at both ends: what it reads is said, and offered to be kept. */
  const layTape = (measuring: Measuring): void => {
    const read = measuredBy(state.survey, measuring);
    const { from } = measuring;
    const said = read?.says ?? (from === null ? words.tapeInHand() : words.tapeHeld(tapeEndName(state.survey, from)));
    change({ measuring, press: null, said, offer: read?.offer ?? null });
  };

  const up = (touch: Touch): void => {
    if (!fingers.delete(touch.pointer)) return;
    if (memory.measuring !== null && memory.press !== null) {
      const last = tapeMoved(memory.measuring, state.survey, touch, memory.press);
      layTape(tapeUp(last, state.survey));
      return;
    }
    if (memory.gesture === null) return;
    // What is let go of is what would have been shown here: the same result for preview and commit.
    const last = memory.gesture.moved(touch);
    const { history } = memory;
    carryOut(last.done());
    const snaps = last.guides.flatMap(({ snap }) => (snap === undefined ? [] : [snap]));
    if (memory.history === history || snaps.length === 0) return;
    change({ offer: snapOffer(state.survey, state.chosen, snaps) });
  };

  /** A finger that is taken away: what it began is forgotten. */
  const lost = (touch: Touch): void => {
    if (!fingers.delete(touch.pointer)) return;
    const { press } = memory;
    if (press !== null) change({ measuring: press.before, press: null });
    cancel();
  };

  const travel = (to: History, said: string): void => {
    const course = presentCourse(to);
    const measuring = tapeStill(memory.measuring, course);
    change({ ...CLEAR, history: to, chosen: stillThere(memory.chosen, course), said, measuring });
  };

  const desk: Desk = {
    state: () => state,
    listen: (heard) => {
      hearers.add(heard);
      return () => hearers.delete(heard);
    },
    touch: (touch) => {
      if (touch.phase === 'down') down(touch);
      else if (touch.phase === 'move') moved(touch);
      else if (touch.phase === 'up') up(touch);
      else lost(touch);
    },
    cancel,
    press: (stroke) => pressed(desk, stroke),
    open: (course) => {
      fingers.clear();
      const said = words.opened(course.title);
      change({ ...CLEAR, history: newHistory(course), chosen: [], said, measuring: null, press: null });
    },
    undo: () => {
      // A drag under way is the last thing that was done: it is what undo takes back.
      if (cancel()) return;
      const { history } = memory;
      const back = undo(history);
      const label = history.steps[history.present]?.label ?? '';
      if (back === history) change({ said: words.nothingToUndo() });
      else travel(back, words.undone(label));
    },
    redo: () => {
      if (cancel()) return;
      const on = redo(memory.history);
      if (on === memory.history) change({ said: words.nothingToRedo() });
      else travel(on, words.redone(on.steps[on.present]?.label ?? ''));
    },
    choose: (keys) => {
      const { course, survey: now } = atRest();
      const chosen = stillThere(keys, course);
      const said = chosen.length === 0 ? words.choseNothing() : words.chose(namesOf(now, chosen));
      change({ chosen, said, offer: null });
    },
    go: (stage) => {
      atRest();
      change({ stage, said: words.stage(stage), measuring: null, press: null, offer: null });
    },
    place: (kind, values, at) => carryOut(placePlan(atRest(), { kind, values, at })),
    erase: () => void carryOut(erasePlan(atRest())),
    duplicate: () => void carryOut(duplicatePlan(atRest())),
    mirror: () => void carryOut(mirrorPlan(atRest())),
    turn: (by) => void carryOut(turnPlan(atRest(), by)),
    nudge: (dx, dy) => void carryOut(nudgePlan(atRest(), dx, dy)),
    setValue: (obstacle, param, text) => carryOut(valuePlan(atRest(), { obstacle, param, text })),
    setPose: (key, field, text) => carryOut(posePlan(atRest(), { key, field, text })),
    setHold: (keys, text) => carryOut(typedPlan(atRest(), keys, text)),
    hold: (keys) => void carryOut(holdPlan(atRest(), keys)),
    loosen: (keys) => void carryOut(loosenPlan(atRest(), keys)),
    drop: (keys) => void carryOut(dropPlan(atRest(), keys)),
    keep: (offer) => {
      const now = offer ?? atRest().offer;
      return now === null ? undefined : carryOut(keepPlan(atRest(), now.draft, now.says));
    },
    pass: () => change({ offer: null }),
    resolve: (offer) => {
      const { standoff } = atRest();
      if (offer === undefined) change({ standoff: null, said: words.leftAsItWas() });
      else carryOut(standoff === null ? takenPlan(state, offer) : resolvedPlan(state, standoff, offer));
    },
    fix: () => carryOut(fixPlan(atRest())) === undefined,
    measure: () => {
      const { measuring, survey: now, chosen } = atRest();
      if (measuring === null) layTape(tapeEndsOf(now, chosen));
      else change({ measuring: null, press: null, offer: null, said: words.tapeAway() });
    },
    gather: () => carryOut(gatherPlan(atRest())),
    lay: (kept, at) => carryOut(layPlan(atRest(), kept, at)),
    edit: (label, edit) => {
      const { course, chosen } = atRest();
      carryOut({ course: edit(course), chosen, label, said: label });
    },
    editLayout: (label, edit) => desk.edit(label, (course) => replaceLayout(course, edit)),
  };
  return desk;
}
