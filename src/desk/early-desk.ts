/** The desk itself: commands and gestures make plans, and `apply` is the one place that applies them. */
import type { Course } from '../core/course/course.ts';
import { type History, newHistory, presentCourse, redo, undo, withStep } from '../core/course/history.ts';
import { replaceLayout } from '../core/course/layouts.ts';
import { takeOpenWays } from '../core/ride/open-ways.ts';
import { survey } from '../core/survey.ts';
import { capitalized } from '../core/text/sentence.ts';
import { messages } from '../words/desk.ts';
import { gaitChanges, gapChanges, legChanges, wayChanges } from './change-words.ts';
import { duplicatePlan, erasePlan, mirrorPlan, nudgePlan, posePlan, turnPlan } from './commands/commands.ts';
import { handCommands } from './commands/hand-commands.ts';
import { gaitPlan, typedHoldPlan, valuePlan } from './commands/parameters.ts';
import {
  dropPlan,
  holdPlan,
  keepPlan,
  measureOnlyPlan,
  resolveExistingPlan,
  resolvePendingPlan,
} from './constraints/constraint-edits.ts';
import { pinPlan } from './constraints/pin.ts';
import { choiceWords } from './description.ts';
import type { Checker, Desk, DeskState } from './desk.ts';
import type { Refusal } from './input.ts';
import { runShortcut } from './keyboard/shortcuts.ts';
import { validTape } from './measuring/tape.ts';
import { createDeskStore, type DeskStore, NOTHING_PENDING } from './model.ts';
import { placePlan } from './placing/add-obstacle.ts';
import { gatherPlan, placeFromShelfPlan } from './placing/custom-obstacles.ts';
import type { Plan } from './plan.ts';
import { cancelGesture, createPointers, layTape, type Pointers } from './pointers.ts';
import { existingKeys } from './selection/selection.ts';

/** The course with its open ways taken anew; the same course when they stay. */
function withOpenWays(course: Course): Course {
  return takeOpenWays(course, { ...survey(course), arena: course.arena });
}

/** Applies a plan: a step in the history, or the reason why there is none. Returns the reason. */
function apply(store: DeskStore, plan: Plan): Refusal {
  if ('refusal' in plan) {
    store.change({ said: plan.refusal, gesture: null });
    return plan.refusal;
  }
  if ('conflict' in plan) {
    store.change({ ...NOTHING_PENDING, pendingConflict: plan.conflict, said: plan.conflict.says });
    return messages.conflict();
  }
  if ('question' in plan) {
    store.change({ ...NOTHING_PENDING, pendingQuestion: plan.question, said: plan.question.says });
    return undefined;
  }
  const model = store.model();
  const before = presentCourse(model.history);
  const { course: planned = before, chosen, label, said, join = null } = plan;
  const course = planned === before ? before : withOpenWays(planned);
  const joins = join !== null && join === model.join;
  const history = withStep(joins ? undo(model.history) : model.history, course, label);
  const tape = validTape(model.tape, course);
  const heard = said.toLowerCase();
  const changes = [
    ...gaitChanges(before, course),
    ...legChanges(before, planned),
    ...wayChanges(before, course, planned),
    ...gapChanges(before, course),
  ];
  const told = [said, ...changes.filter((change) => !heard.includes(change)).map(capitalized)].join('. ');
  store.change({ ...NOTHING_PENDING, history, chosen: existingKeys(chosen, course), said: told, join, tape });
  return undefined;
}

/** The state that a command sees: a gesture under way is cancelled first. */
function atRest(store: DeskStore): DeskState {
  cancelGesture(store);
  return store.state();
}

/** Goes to another place in the history. What no longer exists there is no longer chosen. */
function restore(store: DeskStore, history: History, said: string): void {
  const { chosen, tape } = store.model();
  const course = presentCourse(history);
  store.change({
    ...NOTHING_PENDING,
    history,
    chosen: existingKeys(chosen, course),
    said,
    tape: validTape(tape, course),
  });
}

type DocumentCommands = Pick<Desk, 'open' | 'lengthen' | 'undo' | 'redo' | 'choose' | 'switchStage'>;

/** The commands about the course as a whole, its history, what is chosen, and the stage. */
function documentCommands(store: DeskStore, pointers: Pointers): DocumentCommands {
  return {
    open(course) {
      pointers.clear();
      const said = messages.opened(course.title);
      store.change({
        ...NOTHING_PENDING,
        history: newHistory(course),
        chosen: [],
        said,
        tape: null,
        tapePress: null,
      });
    },
    lengthen(history) {
      if (presentCourse(history) !== presentCourse(store.model().history)) {
        throw new Error('lengthen: the history has another present course than the one that is open');
      }
      store.change({ history });
    },
    undo() {
      // A drag in progress is the last thing that was done: undo cancels it and nothing more.
      if (cancelGesture(store)) return;
      const { history } = store.model();
      const back = undo(history);
      const label = history.steps[history.present]?.label ?? '';
      if (back === history) store.change({ said: messages.nothingToUndo() });
      else restore(store, back, messages.undone(label));
    },
    redo() {
      if (cancelGesture(store)) return;
      const { history } = store.model();
      const on = redo(history);
      if (on === history) store.change({ said: messages.nothingToRedo() });
      else restore(store, on, messages.redone(on.steps[on.present]?.label ?? ''));
    },
    choose(keys) {
      const { course, survey, findings } = atRest(store);
      const chosen = existingKeys(keys, course);
      const said = choiceWords({ survey, findings }, chosen);
      store.change({ chosen, said, suggestion: null });
    },
    switchStage(stage) {
      atRest(store);
      store.change({ stage, said: messages.stage(stage), tape: null, tapePress: null, suggestion: null });
    },
  };
}

type ObstacleCommands = Pick<
  Desk,
  | 'place'
  | 'erase'
  | 'duplicate'
  | 'mirror'
  | 'turn'
  | 'nudge'
  | 'setGait'
  | 'setValue'
  | 'setPose'
  | 'gather'
  | 'placeFromShelf'
  | 'edit'
  | 'editLayout'
>;

/** The commands that add, change and remove obstacles. */
function obstacleCommands(store: DeskStore): ObstacleCommands {
  const run = (plan: (state: DeskState) => Plan): Refusal => apply(store, plan(atRest(store)));
  const edit: Desk['edit'] = (label, change) =>
    void run(({ course, chosen }) => ({ course: change(course), chosen, label, said: label }));
  return {
    place: (kind, values, at) => run((state) => placePlan(state, { kind, values, at })),
    erase: () => void run(erasePlan),
    duplicate: () => void run(duplicatePlan),
    mirror: () => void run(mirrorPlan),
    turn: (by) => void run((state) => turnPlan(state, by)),
    nudge: (dx, dy) => void run((state) => nudgePlan(state, dx, dy)),
    setGait: (leg, gait) => run((state) => gaitPlan(state, { leg, gait })),
    setValue: (obstacle, param, text) => run((state) => valuePlan(state, { obstacle, param, text })),
    setPose: (key, field, text) => run((state) => posePlan(state, { key, field, text })),
    gather: () => run(gatherPlan),
    placeFromShelf: (stored, at) => run((state) => placeFromShelfPlan(state, stored, at)),
    edit,
    editLayout: (label, change) => edit(label, (course) => replaceLayout(course, change)),
  };
}

type ConstraintCommands = Pick<
  Desk,
  'setHold' | 'hold' | 'measureOnly' | 'drop' | 'keep' | 'dismiss' | 'resolve' | 'answer' | 'togglePinned' | 'measure'
>;

/** The commands about constraints, pins and the tape. */
function constraintCommands(store: DeskStore): ConstraintCommands {
  const run = (plan: (state: DeskState) => Plan): Refusal => apply(store, plan(atRest(store)));
  return {
    setHold: (keys, text) => run((state) => typedHoldPlan(state, keys, text)),
    hold: (keys) => void run((state) => holdPlan(state, keys)),
    measureOnly: (keys) => void run((state) => measureOnlyPlan(state, keys)),
    drop: (keys) => void run((state) => dropPlan(state, keys)),
    keep(suggestion) {
      const now = suggestion ?? atRest(store).suggestion;
      return now === null ? undefined : run((state) => keepPlan(state, now.draft, now.says));
    },
    dismiss: () => store.change({ suggestion: null }),
    resolve(resolution) {
      const { pendingConflict } = atRest(store);
      if (resolution === undefined) store.change({ pendingConflict: null, said: messages.leftAsItWas() });
      else
        run((state) =>
          pendingConflict === null
            ? resolveExistingPlan(state, resolution)
            : resolvePendingPlan(state, pendingConflict, resolution),
        );
    },
    answer(yes) {
      const { pendingQuestion } = atRest(store);
      if (pendingQuestion === null) return;
      if (yes) apply(store, pendingQuestion.step);
      else store.change({ pendingQuestion: null, said: messages.leftAsItWas() });
    },
    togglePinned: () => run(pinPlan) === undefined,
    measure() {
      const { tape, survey, chosen, instruments } = atRest(store);
      if (instruments === null) store.change({ said: messages.noTapeYet() });
      else if (tape === null) layTape(store, instruments.tapeEndsOf(survey, chosen));
      else store.change({ tape: null, tapePress: null, suggestion: null, said: messages.tapeAway() });
    },
  };
}

/**
 * A desk on which a course is open, as a page has it at first: without instruments until it is given them. Without a checker it
 * finds nothing until it is given one.
 */
export function createEarlyDesk(first: Course, checker: Checker | null = null): Desk {
  const store = createDeskStore(first, checker);
  const pointers = createPointers(store, (plan) => apply(store, plan));
  const desk: Desk = {
    state: store.state,
    subscribe: store.subscribe,
    takeChecker: (checker) => store.change({ checker }),
    takeInstruments: (instruments) => store.change({ instruments }),
    pointer: pointers.input,
    cancel: () => cancelGesture(store),
    press: (keyPress) => runShortcut(desk, keyPress),
    ...documentCommands(store, pointers),
    ...obstacleCommands(store),
    ...constraintCommands(store),
    ...handCommands(store, pointers, (plan) => apply(store, plan)),
  };
  return desk;
}
