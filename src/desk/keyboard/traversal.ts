import { obstacleOf, pieceOf } from '../../core/course/ids.ts';
import type { Desk } from '../desk.ts';
import { crossingsOn } from '../gestures/crossing.ts';
import { crossIn, crossKey, goOrder, type Keys } from '../selection/selection.ts';

/** How keys move through what lies in the arena and add to the selection. */

/** What Tab walks through: the pieces while one is chosen, otherwise the obstacles in the order of the go. */
function tabOrder(desk: Desk): Keys {
  const { course, survey, chosen } = desk.state();
  const cross = crossIn(chosen[0] ?? '');
  if (cross !== null) return [crossKey(cross.leg, 'all'), ...crossingsOn(survey, cross.leg).map(({ key }) => key)];
  const owner = chosen.find((key) => pieceOf(key) !== undefined);
  if (owner === undefined) return goOrder(course);
  return survey.pieces.filter((piece) => piece.obstacle === obstacleOf(owner)).map((piece) => piece.key);
}

/** Moves one on; at the ends it lets the key press through, so that the focus can leave the arena. */
export function chooseAdjacent(desk: Desk, by: 1 | -1): boolean {
  const keys = tabOrder(desk);
  const { chosen } = desk.state();
  const last = chosen.at(by === 1 ? -1 : 0);
  const here = last === undefined ? -1 : keys.indexOf(last);
  const next = here < 0 ? (by === 1 ? 0 : keys.length - 1) : here + by;
  const key = keys[next];
  desk.choose(key === undefined ? [] : [key]);
  return key !== undefined;
}

/** Every piece, in the order of the go. */
function pieceTabOrder(desk: Desk): Keys {
  const { course, survey } = desk.state();
  return goOrder(course).flatMap((id) =>
    survey.pieces.filter((piece) => piece.obstacle === id).map((piece) => piece.key),
  );
}

/** The next key after the last of the chosen ones that is not chosen, round and round. */
function nextAfter(order: Keys, chosen: Keys): string | undefined {
  const here = order.indexOf(chosen.at(-1) ?? '');
  return [...order.slice(here + 1), ...order].find((each) => !chosen.includes(each));
}

/** Puts the next piece in the place of the one that was added last. */
export function replaceLast(desk: Desk): boolean {
  const { chosen } = desk.state();
  const last = chosen.at(-1);
  if (last === undefined || chosen.length < 2 || pieceOf(last) === undefined) return false;
  const key = nextAfter(pieceTabOrder(desk), chosen);
  if (key === undefined) return false;
  desk.choose([...chosen.slice(0, -1), key]);
  return true;
}

/** Adds the next obstacle in the order of the go to what is chosen; while pieces are chosen, the next piece. */
export function addNext(desk: Desk): boolean {
  const { course, chosen } = desk.state();
  if (chosen.some((each) => pieceOf(each) !== undefined)) {
    const next = nextAfter(pieceTabOrder(desk), chosen);
    if (next === undefined) return false;
    desk.choose([...chosen.filter((each) => pieceOf(each) !== undefined), next]);
    return true;
  }
  const order = goOrder(course);
  const here = Math.max(...chosen.map((key) => order.indexOf(obstacleOf(key))), -1);
  const key = [...order.slice(here + 1), ...order].find((each) => !chosen.includes(each));
  if (key === undefined) return false;
  desk.choose([...chosen.filter((each) => pieceOf(each) === undefined), key]);
  return true;
}
