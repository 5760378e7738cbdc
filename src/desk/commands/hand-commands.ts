/** The commands about how the hand works: snapping, one piece alone; and the arena that it works in. */
import type { Finding } from '../../core/checks/check.ts';
import { arenaSizeWords, isSameSize } from '../../core/course/arena-size.ts';
import type { Arena } from '../../core/course/course.ts';
import { withArena } from '../../core/course/edit-arena.ts';
import { presentCourse, undo } from '../../core/course/history.ts';
import { pieceOf } from '../../core/course/ids.ts';
import { printLength } from '../../core/measure/length.ts';
import { type Survey, survey as surveyOf } from '../../core/survey.ts';
import { andList, capitalized } from '../../core/text/sentence.ts';
import { labels, messages } from '../../words/desk.ts';
import { handWords } from '../../words/hand.ts';
import { movePieceAlone } from '../constraints/piece-alone.ts';
import type { Checker, Desk, DeskState } from '../desk.ts';
import type { Refusal } from '../input.ts';
import type { DeskStore } from '../model.ts';
import { nameOf } from '../names.ts';
import { placeSentences } from '../placing/wall-distances.ts';
import type { Plan } from '../plan.ts';
import { aloneJoin, type Pointers } from '../pointers.ts';
import { RIDE_END, RIDE_START } from '../selection/selection.ts';

/** What does not fit into the arena, by findings. */
export function misfits(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter(({ misfit }) => misfit !== undefined);
}

/** The key of what a misfit is about. */
export function misfitKey({ misfit, keys }: Finding): string {
  return misfit === 'end' ? RIDE_END : (keys[0] ?? RIDE_START);
}

/** What does not fit, each once, as people call it. */
function misfitNames(survey: Survey, found: readonly Finding[]): readonly string[] {
  return [...new Set(found.map(misfitKey))].map((key) => nameOf(survey, key));
}

function arenaPlan({ course, survey, chosen }: DeskState, next: Partial<Arena>, checker: Checker | null): Plan {
  const changed = withArena(course, next);
  if (changed === course) return { course, chosen, label: '', said: messages.leftAsItWas() };
  const after = surveyOf(changed);
  const found = (each: Survey) => misfits(checker?.findingsOf(each) ?? []);
  const before = new Set(found(survey).map(({ id }) => id));
  const names = misfitNames(
    after,
    found(after).filter(({ id }) => !before.has(id)),
  );
  const { arena, unit } = changed;
  const isSized = !isSameSize(arena, course.arena);
  const { at, wall } = arena.entrance;
  const done = isSized
    ? handWords.arenaIsNow(arenaSizeWords(arena, unit))
    : handWords.wayInIsNow(handWords.wayInPlace(printLength(at, unit), wall));
  const said =
    names.length === 0 ? done : `${done}. ${capitalized(handWords.misfits(andList(names), names.length === 1))}`;
  return { course: changed, chosen, label: isSized ? labels.arena() : labels.wayIn(), said };
}

/** The last drag done again with just its piece; it takes the place of that drag in the history. */
function alonePlan({ survey, chosen }: DeskState, store: DeskStore): Plan | null {
  const { again, history } = store.model();
  if (again === null) return null;
  const course = presentCourse(undo(history));
  const outcome = movePieceAlone(course, again.key, again.pose);
  const name = nameOf(survey, again.key);
  const moved = messages.moved(name, placeSentences(outcome.course, [again.key], course));
  const said = handWords.movedAlone(moved, outcome.gaveWay ?? []);
  return { course: outcome.course, chosen, label: labels.move(name), said, join: aloneJoin(again.key) };
}

export function handCommands(
  store: DeskStore,
  pointers: Pointers,
  apply: (plan: Plan) => Refusal,
): Pick<Desk, 'toggleSnaps' | 'toggleAlone' | 'changeArena'> {
  return {
    toggleSnaps() {
      const snaps = !store.model().snaps;
      store.change({ snaps, said: snaps ? handWords.snapsOn : handWords.snapsOff });
      pointers.again();
    },
    toggleAlone() {
      const { chosen, isAlone } = store.state();
      const [only, more] = chosen;
      if (only === undefined || more !== undefined || pieceOf(only) === undefined) return false;
      const plan = isAlone ? null : alonePlan(store.state(), store);
      store.change({ alone: isAlone ? null : only, said: isAlone ? handWords.aloneOff : handWords.aloneOn });
      if (plan !== null) apply(plan);
      else pointers.again();
      return true;
    },
    changeArena(next) {
      apply(arenaPlan(store.state(), next, store.model().checker));
    },
  };
}
