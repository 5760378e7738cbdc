import type { Finding } from '../core/checks/check.ts';
import { findingsOf } from '../core/checks/checks.ts';
import type { Course } from '../core/course/course.ts';
import { advanced, begun, type History, presentCourse, redone, undone } from '../core/course/history.ts';
import { changedLayout } from '../core/course/layouts.ts';
import { type Survey, survey } from '../core/survey.ts';
import { type Keys, stillThere } from './chosen.ts';
import type { Desk, DeskState, Refusal, Stage, Touch } from './desk.ts';
import type { Gesture } from './gesture.ts';
import { pressed } from './keys.ts';
import { namesOf } from './names.ts';
import { placePlan } from './place.ts';
import { pressGesture } from './press.ts';
import { duplicatePlan, erasePlan, mirrorPlan, nudgePlan, type Plan, posePlan, turnPlan, valuePlan } from './verbs.ts';
import { words } from './words.ts';

/** What the desk remembers; everything else is derived from it. */
interface Memory {
  readonly history: History;
  readonly chosen: Keys;
  readonly stage: Stage;
  readonly said: string;
  readonly gesture: Gesture | null;
  /** The key under which the last step may be joined by one like it; null when it may not. */
  readonly join: string | null;
}

function stateOf(memory: Memory): DeskState {
  const { gesture, history } = memory;
  const course = gesture?.course ?? presentCourse(history);
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
  };
}

/** A desk with a course on it. */
export function createDesk(first: Course): Desk {
  let memory: Memory = {
    history: begun(first),
    chosen: [],
    stage: 'set',
    said: words.ready(),
    gesture: null,
    join: null,
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
    const { course = presentCourse(memory.history), chosen, label, said, join = null } = plan;
    const joins = join !== null && join === memory.join;
    const history = advanced(joins ? undone(memory.history) : memory.history, course, label);
    change({ history, chosen: stillThere(chosen, course), said, gesture: null, join });
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
    // A second finger is a pinch: the drag is forgotten, and nothing starts until all fingers are up.
    if (alone) change({ gesture: pressGesture(touch, atRest()) });
    else cancel();
  };

  const moved = (touch: Touch): void => {
    const { gesture } = memory;
    if (gesture === null || !fingers.has(touch.pointer)) return;
    const next = gesture.moved(touch);
    if (next !== gesture) change({ gesture: next });
  };

  const up = (touch: Touch): void => {
    if (!fingers.delete(touch.pointer) || memory.gesture === null) return;
    // What is let go of is what would have been shown here: the same result for preview and commit.
    const { gesture } = memory;
    carryOut(gesture.moved(touch).done());
  };

  const travel = (to: History, said: string): void => {
    change({ history: to, chosen: stillThere(memory.chosen, presentCourse(to)), said, join: null });
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
      else if (fingers.delete(touch.pointer)) cancel();
    },
    cancel,
    press: (stroke) => pressed(desk, stroke),
    open: (course) => {
      fingers.clear();
      const said = words.opened(course.title);
      change({ history: begun(course), chosen: [], gesture: null, said, join: null });
    },
    undo: () => {
      // A drag under way is the last thing that was done: it is what undo takes back.
      if (cancel()) return;
      const { history } = memory;
      const back = undone(history);
      const label = history.steps[history.present]?.label ?? '';
      if (back === history) change({ said: words.nothingToUndo() });
      else travel(back, words.undone(label));
    },
    redo: () => {
      if (cancel()) return;
      const on = redone(memory.history);
      if (on === memory.history) change({ said: words.nothingToRedo() });
      else travel(on, words.redone(on.steps[on.present]?.label ?? ''));
    },
    choose: (keys) => {
      const { course, survey: now } = atRest();
      const chosen = stillThere(keys, course);
      change({ chosen, said: chosen.length === 0 ? words.choseNothing() : words.chose(namesOf(now, chosen)) });
    },
    go: (stage) => {
      atRest();
      change({ stage, said: words.stage(stage) });
    },
    place: (kind, values, at) => carryOut(placePlan(atRest(), { kind, values, at })),
    erase: () => void carryOut(erasePlan(atRest())),
    duplicate: () => void carryOut(duplicatePlan(atRest())),
    mirror: () => void carryOut(mirrorPlan(atRest())),
    turn: (by) => void carryOut(turnPlan(atRest(), by)),
    nudge: (dx, dy) => void carryOut(nudgePlan(atRest(), dx, dy)),
    setValue: (obstacle, param, text) => carryOut(valuePlan(atRest(), { obstacle, param, text })),
    setPose: (key, field, text) => carryOut(posePlan(atRest(), { key, field, text })),
    edit: (label, edit) => {
      const { course, chosen } = atRest();
      carryOut({ course: edit(course), chosen, label, said: label });
    },
    editLayout: (label, edit) => desk.edit(label, (course) => changedLayout(course, edit)),
  };
  return desk;
}
