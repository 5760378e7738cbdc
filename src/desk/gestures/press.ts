import type { PlacedPiece } from '../../core/course/placed.ts';
import { distance } from '../../core/plane/point.ts';
import { ringContains } from '../../core/plane/ring.ts';
import { choiceWords } from '../description.ts';
import type { DeskState } from '../desk.ts';
import type { PointerInput } from '../input.ts';
import { pieceUnderPoint } from '../selection/hit.ts';
import { marqueeGesture } from '../selection/marquee.ts';
import { outlines } from '../selection/outlines.ts';
import { type BendKey, type Keys, toggleKey } from '../selection/selection.ts';
import { bendGesture, newBendAt, ridePointAt } from './bend.ts';
import { type CrossingHandle, crossingAt, crossingGesture, obstacleOfChoice } from './crossing.ts';
import type { Gesture } from './gesture.ts';
import { moveGesture } from './move.ts';
import { pieceGesture } from './piece.ts';
import { rideEndAt } from './ride-ends.ts';
import { turnGesture } from './turn.ts';
import { type TurnHandle, turnHandle } from './turn-handle.ts';

/** A pointer that moved less than this share of the pick radius has tapped. */
const TAP = 1 / 4;

/** What lies under the pointer when it goes down. */
type Target =
  | { readonly kind: 'handle'; readonly handle: TurnHandle }
  | { readonly kind: 'crossing'; readonly crossing: CrossingHandle }
  | { readonly kind: 'ride-point'; readonly key: string }
  | { readonly kind: 'line'; readonly bend: BendKey }
  | { readonly kind: 'piece'; readonly piece: PlacedPiece }
  | { readonly kind: 'chosen' }
  | { readonly kind: 'ground' };

function targetAt(input: PointerInput, state: DeskState): Target {
  const { survey, stage } = state;
  const { at, pickRadius } = input;
  const handle = turnHandle(state, pickRadius);
  if (handle !== null && distance(handle.at, at) <= pickRadius) return { kind: 'handle', handle };
  const crossing = crossingAt(state, at, pickRadius);
  if (crossing !== null) return { kind: 'crossing', crossing };
  const key = stage === 'ride' ? ridePointAt(survey, at, pickRadius) : null;
  if (key !== null) return { kind: 'ride-point', key };
  const piece = pieceUnderPoint(survey, at, pickRadius);
  // A pole that lies under the end of the line is found first, but for its reach beyond itself.
  const end = piece !== null && ringContains(piece.footprint, at) ? null : rideEndAt(survey, at, pickRadius);
  if (end !== null) return { kind: 'ride-point', key: end };
  if (piece !== null) return { kind: 'piece', piece };
  if (outlines(state).some((each) => ringContains(each.ring, at))) return { kind: 'chosen' };
  const bend = stage === 'ride' ? newBendAt(survey, at, pickRadius) : null;
  return bend === null ? { kind: 'ground' } : { kind: 'line', bend };
}

/** The keys that are chosen while the pointer is down. */
function pressedKeys(input: PointerInput, state: DeskState, target: Target): Keys {
  const { chosen } = state;
  if (target.kind === 'ride-point') return [target.key];
  if (target.kind !== 'piece') return chosen;
  const { obstacle, key } = target.piece;
  if (chosen.includes(obstacle)) return chosen;
  const pieces = chosen.some((each) => each.startsWith(`${obstacle}/`));
  if (input.isAdding && hasPieceKeys(chosen))
    return chosen.includes(key) ? chosen : [...chosen.filter(isPieceKey), key];
  if (input.isAdding) return [...chosen.filter(isObstacleKey), obstacle];
  return pieces ? [key] : [obstacle];
}

function isObstacleKey(key: string): boolean {
  return !/[/:]/.test(key);
}

function isPieceKey(key: string): boolean {
  return key.includes('/');
}

/** Whether single pieces are chosen: then more of them are added, of any obstacle. */
function hasPieceKeys(chosen: Keys): boolean {
  return chosen.some(isPieceKey);
}

/** The keys that are chosen after a tap. */
function tappedKeys(input: PointerInput, state: DeskState, target: Target): Keys {
  const { chosen } = state;
  switch (target.kind) {
    case 'handle':
      return chosen;
    case 'crossing': {
      // A second tap goes back to the obstacle, whose crossings go together.
      const meant = obstacleOfChoice(state.survey, chosen);
      if (chosen.includes(target.crossing.key)) return meant === undefined ? [] : [meant];
      return [target.crossing.key];
    }
    case 'ride-point':
      return [target.key];
    case 'line':
    case 'chosen':
    case 'ground':
      return input.isAdding ? chosen : [];
    case 'piece': {
      const { obstacle, key } = target.piece;
      if (input.isAdding && hasPieceKeys(chosen)) return toggleKey(chosen.filter(isPieceKey), key);
      if (input.isAdding) return toggleKey(chosen.filter(isObstacleKey), obstacle);
      const alone = chosen.length === 1 && chosen[0] === obstacle;
      const inside = chosen.some((each) => each.startsWith(`${obstacle}/`));
      return alone || inside ? [key] : [obstacle];
    }
  }
}

function dragGesture(down: PointerInput, state: DeskState, target: Target): Gesture {
  const keys = pressedKeys(down, state, target);
  switch (target.kind) {
    case 'handle':
      return turnGesture(down, state, target.handle.about);
    case 'crossing':
      return crossingGesture(down, state, target.crossing);
    case 'ride-point':
      return bendGesture(down, state, target.key);
    case 'line':
      return bendGesture(down, state, target.bend);
    case 'piece':
      return keys.includes(target.piece.key)
        ? pieceGesture(down, state, target.piece)
        : moveGesture(down, state, keys.filter(isObstacleKey));
    case 'chosen': {
      const piece = state.survey.pieces.find((each) => each.key === keys[0]);
      return piece === undefined
        ? moveGesture(down, state, keys.filter(isObstacleKey))
        : pieceGesture(down, state, piece);
    }
    case 'ground':
      return marqueeGesture(down, state);
  }
}

/** Whether a finger that goes down here takes hold of something: of what is chosen already, or of its handles. */
export function isGrasp(down: PointerInput, state: DeskState): boolean {
  if (state.tape !== null) return true;
  const { chosen, survey } = state;
  const target = targetAt(down, state);
  switch (target.kind) {
    case 'handle':
    case 'crossing':
    case 'chosen':
      return true;
    case 'ride-point':
      return chosen.includes(target.key);
    case 'piece':
      return chosen.includes(target.piece.key) || chosen.includes(target.piece.obstacle);
    case 'line': {
      const leg = survey.layout.ride.legs.find(({ id }) => id === target.bend.leg);
      return leg !== undefined && obstacleOfChoice(survey, chosen) === leg.obstacle;
    }
    case 'ground':
      return false;
  }
}

/** A press: a tap until the pointer moves far enough to drag what was under it. */
export function pressGesture(down: PointerInput, state: DeskState): Gesture {
  const target = targetAt(down, state);
  const tapped = tappedKeys(down, state, target);
  const press: Gesture = {
    course: null,
    chosen: pressedKeys(down, state, target),
    guides: [],
    doing: null,
    moved: (input) =>
      distance(input.at, down.at) < TAP * down.pickRadius ? press : dragGesture(down, state, target).moved(input),
    commit: () => ({
      chosen: tapped,
      label: '',
      said: choiceWords(state, tapped),
    }),
  };
  return press;
}
