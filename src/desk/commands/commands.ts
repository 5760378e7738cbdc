/**
 * The commands of the desk as pure functions: each makes a plan from the state. `editor.ts` is the one place that
 * applies plans.
 */

import {
  duplicateObstacles,
  eraseByKeys,
  flipObstacles,
  placeAt,
  shiftByKeys,
} from '../../core/course/edit-obstacles.ts';
import { obstacleOf, pieceOf } from '../../core/course/ids.ts';
import { printAngle, readAngle } from '../../core/measure/angle.ts';
import { printLength, readLength } from '../../core/measure/length.ts';
import type { Infeasible } from '../../core/obstacles/obstacle.ts';
import type { Params } from '../../core/pieces/params.ts';
import { normalizeAngle, type Pose } from '../../core/plane/pose.ts';
import { labels, messages } from '../../words/desk.ts';
import { deskNames } from '../../words/desk-names.ts';
import { handWords } from '../../words/hand.ts';
import { terms } from '../../words/terms.ts';
import { valueChanges } from '../change-words.ts';
import { moveObstacles, movePiece } from '../constraints/constrained-move.ts';
import { movePieceAlone } from '../constraints/piece-alone.ts';
import type { DeskState } from '../desk.ts';
import { moveRidePoint, poseRidePoint, removeBend, ridePoint, ridePose } from '../gestures/bend.ts';
import { nudgeCrossing } from '../gestures/crossing.ts';
import { isRideEnd, moveRideEnd, withoutRideEnd } from '../gestures/ride-ends.ts';
import { headingOf, turnChoice } from '../gestures/turn.ts';
import { turnHandle } from '../gestures/turn-handle.ts';
import { nameOf, namesOf } from '../names.ts';
import { freeShift } from '../placing/free-space.ts';
import { placeSentences } from '../placing/wall-distances.ts';
import type { Plan } from '../plan.ts';
import { bendIn, boundsOfPieces, chosenPieces, crossIn, RIDE_END } from '../selection/selection.ts';
import { printValue } from './typed.ts';

function isObstacleKey(key: string): boolean {
  return pieceOf(key) === undefined && !key.includes(':');
}

export function erasePlan({ course, survey, chosen }: DeskState): Plan {
  if (chosen.length === 0) return { refusal: messages.choseNothing() };
  const open = chosen.includes(RIDE_END) ? withoutRideEnd(course) : course;
  if (open !== course && chosen.length === 1) {
    return { course: open, chosen: [], label: labels.erase(deskNames.theEnd), said: messages.endTaken() };
  }
  const bends = chosen.map(bendIn).filter((bend) => bend !== null);
  const straighter = [...bends].sort((a, b) => b.index - a.index).reduce(removeBend, open);
  const next = eraseByKeys(straighter, chosen);
  if (next === course) return { refusal: messages.staysThere(namesOf(survey, chosen)) };
  const name = namesOf(survey, chosen);
  const onlyBends = bends.length === chosen.length;
  return {
    course: next,
    chosen: [],
    label: onlyBends ? labels.unbend() : labels.erase(name),
    said: [onlyBends ? messages.unbent() : messages.erased(name), ...valueChanges(course, next)].join('. '),
  };
}

export function duplicatePlan({ course, survey, chosen }: DeskState): Plan {
  const keys = [...new Set(chosen.filter((key) => !key.includes(':')).map(obstacleOf))];
  const bounds = boundsOfPieces(chosenPieces(survey, keys));
  if (bounds === null) return { refusal: messages.choseNothing() };
  const shift = freeShift(bounds, course.arena, survey.obstacles) ?? { x: 1, y: -1 };
  const copies = duplicateObstacles(course, keys, shift.x, shift.y);
  const name = namesOf(survey, keys);
  return { course: copies.course, chosen: copies.keys, label: labels.duplicate(name), said: messages.duplicated(name) };
}

export function mirrorPlan({ course, survey, chosen }: DeskState): Plan {
  const keys = [...new Set(chosen.filter((key) => !key.includes(':')).map(obstacleOf))];
  if (keys.length === 0) return { refusal: messages.choseNothing() };
  const name = namesOf(survey, keys);
  return { course: flipObstacles(course, keys), chosen, label: labels.mirror(name), said: messages.mirrored(name) };
}

export function turnPlan(state: DeskState, by: number): Plan {
  const { course, survey, chosen } = state;
  const [only, more] = chosen;
  if (isRideEnd(only) && more === undefined) {
    const pose = ridePose(course, only);
    if (pose === undefined) return { refusal: messages.turnOne() };
    const angle = normalizeAngle(pose.angle + by);
    const name = nameOf(survey, only);
    const said = messages.turned(name, angle, pose.angle);
    const turned = moveRideEnd(course, only, { ...pose, angle });
    return { course: turned, chosen, label: labels.turn(name), said, join: `turn ${only}` };
  }
  const handle = turnHandle(state, 0);
  if (handle === null) return { refusal: chosen.length === 0 ? messages.choseNothing() : messages.turnOne() };
  const outcome = turnChoice(state, by, handle.about);
  if (outcome.kind === 'stuck') return { refusal: outcome.why };
  const name = namesOf(survey, chosen);
  const start = headingOf(state);
  return {
    course: outcome.course,
    chosen,
    label: labels.turn(name),
    said: messages.turned(name, start === null ? null : normalizeAngle(start + by), start),
    join: `turn ${chosen.join(' ')}`,
  };
}

export function nudgePlan({ course, survey, chosen, isAlone }: DeskState, dx: number, dy: number): Plan {
  if (chosen.length === 0) return { refusal: messages.choseNothing() };
  const cross = crossIn(chosen[0] ?? '');
  if (cross !== null) {
    const outcome = nudgeCrossing(survey, cross, { dx, dy });
    if ('refusal' in outcome) return outcome;
    return { ...outcome, chosen, label: labels.move(namesOf(survey, chosen)), join: `nudge ${chosen.join(' ')}` };
  }
  const ids = chosen.filter(isObstacleKey);
  const carried = moveObstacles(course, shiftByKeys(course, ids, dx, dy), { ids, name: namesOf(survey, ids) });
  if (carried.kind === 'stuck') return { refusal: carried.why };
  let next = carried.course;
  const gaveWay: string[] = [];
  for (const key of chosen.filter((each) => !isObstacleKey(each))) {
    const at = ridePoint(next, key);
    if (at !== null) next = moveRidePoint(next, key, { x: at.x + dx, y: at.y + dy });
    const piece = survey.pieces.find((each) => each.key === key);
    if (piece === undefined) continue;
    const name = nameOf(survey, key);
    if (piece.piece.fixed) return { refusal: messages.pieceIsPinned(name) };
    const pose = { ...piece.pose, x: piece.pose.x + dx, y: piece.pose.y + dy };
    const outcome = isAlone ? movePieceAlone(next, key, pose) : movePiece(next, key, { pose, name });
    if (outcome.kind === 'stuck') return { refusal: outcome.why };
    next = outcome.course;
    gaveWay.push(...(outcome.gaveWay ?? []));
  }
  const name = namesOf(survey, chosen);
  const said = handWords.movedAlone(messages.moved(name, placeSentences(next, chosen, course)), gaveWay);
  return { course: next, chosen, label: labels.move(name), said, join: `nudge ${chosen.join(' ')}` };
}

/** A kind's refusal as one sentence, with the values that would work. */
export function infeasibleSentence(infeasible: Infeasible, params: Params, unit: DeskState['course']['unit']): string {
  const nearest = Object.entries(infeasible.nearest ?? {}).flatMap(([key, value]) => {
    const param = params[key];
    return param === undefined ? [] : [`${param.label.toLowerCase()} ${printValue(value, param, unit)}`];
  });
  return nearest.length === 0 ? infeasible.why : messages.nearest(infeasible.why, nearest);
}

const FIELDS: Readonly<Record<keyof Pose, string>> = {
  x: deskNames.distanceFromWestWall,
  y: deskNames.distanceFromSouthWall,
  angle: terms.heading,
};

export function posePlan(
  state: DeskState,
  asked: { readonly key: string; readonly field: keyof Pose; readonly text: string },
): Plan {
  const { course, survey } = state;
  const { key, field } = asked;
  const piece = survey.pieces.find((each) => each.key === key);
  const obstacle = survey.layout.obstacles.find((each) => each.id === key);
  const onRide = ridePose(course, key);
  const pose = piece?.pose ?? obstacle?.pose ?? onRide;
  if (pose === undefined) return { refusal: messages.noSuchObstacle(key) };
  const typed = field === 'angle' ? readAngle(asked.text) : readLength(asked.text, course.unit);
  if (typed.kind === 'refused') return { refusal: typed.why };
  const name = nameOf(survey, key);
  const value: number = typed.value;
  const target = { ...pose, [field]: value };
  const print = (each: number) => (field === 'angle' ? printAngle(each) : printLength(each, course.unit));
  const done = {
    chosen: state.chosen,
    label: labels.change(name, FIELDS[field]),
    said: messages.withWas(messages.changed(name, FIELDS[field], print(value)), print(pose[field])),
  };
  if (onRide !== undefined) return { ...done, course: poseRidePoint(course, key, target) };
  if (piece?.piece.fixed) return { refusal: messages.pieceIsPinned(name) };
  const outcome =
    piece === undefined
      ? moveObstacles(course, placeAt(course, key, target), { ids: [key], name })
      : state.isAlone
        ? movePieceAlone(course, key, target)
        : movePiece(course, key, { pose: target, name });
  return outcome.kind === 'stuck' ? { refusal: outcome.why } : { ...done, course: outcome.course };
}
