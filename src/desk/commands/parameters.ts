/** Plans that change an obstacle's parameters: whatever a number is typed on, the obstacle is built anew with it. */
import { type Course, currentLayout } from '../../core/course/course.ts';
import { departuresOf, lostDepartures } from '../../core/course/departures.ts';
import { rebuildObstacle, shiftByKeys } from '../../core/course/edit-obstacles.ts';
import { changeLeg } from '../../core/course/edit-ride.ts';
import { obstacleOf, pieceOf } from '../../core/course/ids.ts';
import { placedObstacle } from '../../core/course/placed.ts';
import { isDriving, resolvedConstraints } from '../../core/course/resolved-constraints.ts';
import { roundToNanometre } from '../../core/course/transform.ts';
import { GAITS, type Gait } from '../../core/horses/horse.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { type DerivedHold, derivedHolds } from '../../core/obstacles/derived-holds.ts';
import type { Obstacle } from '../../core/obstacles/obstacle.ts';
import { obstacleKind } from '../../core/obstacles/obstacles.ts';
import type { Value, Values } from '../../core/pieces/params.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { labels, messages } from '../../words/desk.ts';
import { deskNames } from '../../words/desk-names.ts';
import { changesInWords, gaitChanges } from '../change-words.ts';
import { isConstrained } from '../constraints/constrained-move.ts';
import { readHold, setHoldPlan, solvedPlan } from '../constraints/constraint-edits.ts';
import { stayingPiece } from '../constraints/solve-course.ts';
import type { DeskState } from '../desk.ts';
import { nameOf } from '../names.ts';
import type { Plan } from '../plan.ts';
import type { Keys } from '../selection/selection.ts';
import { infeasibleSentence } from './commands.ts';
import { printValue, readValue } from './typed.ts';

/** What would be lost by the change, in words; empty when nothing is. */
function lossesInWords(old: Obstacle, next: Obstacle, unit: LengthUnit): readonly string[] {
  const params = obstacleKind(old.kind)?.params ?? {};
  const { holds, others } = lostDepartures(departuresOf(old), next);
  const lost = holds.map(({ id, param = '', hold }) => {
    const [about, was] = [params[param], old.values[param]];
    if (about === undefined || was === undefined) return messages.lostChange(id.replaceAll('-', ' '));
    return messages.lostException(about.label, printValue(hold, about, unit), printValue(was, about, unit));
  });
  return [...lost, ...others.map((id) => messages.lostChange(id.replaceAll('-', ' ')))];
}

interface ParameterChange {
  readonly obstacle: Obstacle;
  readonly values: Values;
  readonly param: string;
  /** Parameters whose own exceptions go. */
  readonly reset?: readonly string[];
  /** The piece that stays where it is, by key; absent: the obstacle's frame stays. */
  readonly staying?: string | null;
  readonly note?: string | undefined;
}

/** The course shifted so that a piece lies where it lay before. */
function withStaying(before: Course, after: Course, key: string): Course {
  const poseIn = (course: Course) =>
    currentLayout(course)
      .obstacles.filter(({ id }) => id === obstacleOf(key))
      .flatMap((each) => placedObstacle(each).pieces)
      .find((piece) => piece.key === key)?.pose;
  const [was, is] = [poseIn(before), poseIn(after)];
  return was === undefined || is === undefined
    ? after
    : shiftByKeys(after, [obstacleOf(key)], was.x - is.x, was.y - is.y);
}

/** The changed values, and what is usual with them where the obstacle had what was usual before: a gap for a gait. */
function withUsual(obstacle: Obstacle, values: Values): Values {
  const usual = obstacleKind(obstacle.kind)?.usual;
  if (usual === undefined) return values;
  const [before, after] = [usual(obstacle.values), usual({ ...obstacle.values, ...values })];
  const follow = Object.entries(after).filter(
    ([key, value]) => !Object.hasOwn(values, key) && before[key] === obstacle.values[key] && before[key] !== value,
  );
  return { ...Object.fromEntries(follow), ...values };
}

function parameterPlan(state: DeskState, change: ParameterChange): Plan {
  const { course, survey, chosen } = state;
  const { obstacle, values, param, reset = [], staying = null, note } = change;
  const params = obstacleKind(obstacle.kind)?.params ?? {};
  const label = labels.change(nameOf(survey, obstacle.id), params[param]?.label ?? param);
  const outcome = rebuildObstacle(course, obstacle.id, withUsual(obstacle, values), { reset });
  if ('why' in outcome) return { refusal: infeasibleSentence(outcome, params, course.unit) };
  const ridden = 'gait' in values ? withGaitOver(outcome, obstacle.id, values.gait) : outcome;
  const moved = staying === null ? ridden : withStaying(course, ridden, staying);
  const next = currentLayout(moved).obstacles.find(({ id }) => id === obstacle.id);
  const changes = changesInWords(obstacle.values, next?.values ?? obstacle.values, params, course.unit);
  const gaits = gaitChanges(course, moved, obstacle.id);
  const said = capitalized(messages.changes(nameOf(survey, obstacle.id), [...changes, ...gaits]));
  const done = { chosen, label, said: note === undefined ? said : `${said} (${note})` };
  // Its constraints to others and to the walls are met again with its new shape.
  const plan: Plan = isConstrained(moved, [obstacle.id])
    ? solvedPlan(moved, { ...done, staying })
    : { ...done, course: moved };
  const losses = next === undefined ? [] : lossesInWords(obstacle, next, course.unit);
  return losses.length > 0 && !('refusal' in plan) ? { question: { ...messages.wouldLose(losses), step: plan } } : plan;
}

/** Types a parameter of an obstacle. */
export function valuePlan(
  state: DeskState,
  asked: { readonly obstacle: string; readonly param: string; readonly text: string },
): Plan {
  const { course, survey } = state;
  const obstacle = survey.layout.obstacles.find((each) => each.id === asked.obstacle);
  if (obstacle === undefined) return { refusal: messages.noSuchObstacle(asked.obstacle) };
  const param = obstacleKind(obstacle.kind)?.params[asked.param];
  if (param === undefined) return { refusal: messages.noSuchParam(asked.param, nameOf(survey, obstacle.id)) };
  const typed = readValue(asked.text, param, course.unit);
  if (typed.kind === 'refused') return { refusal: typed.why };
  return setParameterPlan(state, obstacle, { param: asked.param, value: typed.value, note: typed.note });
}

/** The gait of an obstacle that is ridden once is the gait over it. */
function withGaitOver(course: Course, id: string, gait: Value | undefined): Course {
  const [leg, more] = currentLayout(course).ride.legs.filter((each) => each.obstacle === id);
  const passages = currentLayout(course).obstacles.find((each) => each.id === id)?.passages ?? [];
  const known = GAITS.find((each) => each === gait);
  const allows = passages.find((passage) => passage.id === leg?.passage)?.gaits ?? [];
  if (leg === undefined || more !== undefined || known === undefined || !allows.includes(known)) return course;
  return changeLeg(course, leg.id, { gait: known });
}

/** Sets the gait over an obstacle in one leg: the obstacle's own gait, where no other leg rides it. */
export function gaitPlan(state: DeskState, asked: { readonly leg: string; readonly gait: Gait }): Plan {
  const { course, survey, chosen } = state;
  const legs = survey.layout.ride.legs;
  const leg = legs.find(({ id }) => id === asked.leg);
  const obstacle = survey.layout.obstacles.find(({ id }) => id === leg?.obstacle);
  if (leg === undefined || obstacle === undefined) return { refusal: messages.noSuchObstacle(asked.leg) };
  const isOnly = legs.filter((each) => each.obstacle === obstacle.id).length === 1;
  const params = obstacleKind(obstacle.kind)?.params ?? {};
  if (isOnly && params.gait !== undefined)
    return setParameterPlan(state, obstacle, { param: 'gait', value: asked.gait });
  const next = changeLeg(course, leg.id, { gait: asked.gait });
  const said = gaitChanges(course, next).map(capitalized).join('; ');
  return { course: next, chosen, label: labels.change(nameOf(survey, obstacle.id), deskNames.gaitOverIt), said };
}

/** Sets a parameter to a value that is known to be of its kind. */
export function setParameterPlan(
  state: DeskState,
  obstacle: Obstacle,
  { param, value, note }: { readonly param: string; readonly value: Value; readonly note?: string | undefined },
): Plan {
  return parameterPlan(state, { obstacle, values: { [param]: value }, param, note });
}

/** The obstacle and the parameter that the measures are, when they are all that follow it; else undefined. */
function parameterOf(state: DeskState, keys: Keys): { obstacle: Obstacle; derived: DerivedHold } | undefined {
  const owners = new Set(keys.map(obstacleOf));
  const [id] = owners;
  const obstacle = state.survey.layout.obstacles.find((each) => each.id === id);
  if (owners.size !== 1 || obstacle === undefined) return undefined;
  const all = derivedHolds(obstacle);
  const named = keys.map((key) => all.get(pieceOf(key) ?? ''));
  const [derived] = named;
  if (derived === undefined || named.some((each) => each?.param !== derived.param)) return undefined;
  const followers = resolvedConstraints(state.survey.layout).filter(
    (each) => each.owner === id && isDriving(each) && all.get(each.constraint.id)?.param === derived.param,
  );
  return followers.every(({ key }) => keys.includes(key)) ? { obstacle, derived } : undefined;
}

/**
 * Types the value of measures. Where they are all that follow a parameter of their obstacle, they are that parameter and
 * it is set; a measure at one place of several becomes an exception that the obstacle carries.
 */
export function typedHoldPlan(state: DeskState, keys: Keys, text: string): Plan {
  const found = parameterOf(state, keys);
  const typed = readHold(state, keys, text);
  if ('refusal' in typed) return typed;
  if (found === undefined) return setHoldPlan(state, keys, text);
  const { obstacle, derived } = found;
  const now = obstacle.values[derived.param];
  if (typeof now !== 'number') return setHoldPlan(state, keys, text);
  const value = roundToNanometre(now + (typed.value - derived.hold) / derived.slope);
  return parameterPlan(state, {
    obstacle,
    values: { [derived.param]: value },
    param: derived.param,
    reset: [derived.param],
    staying: stayingPiece(state.survey, typed.pieces),
  });
}
