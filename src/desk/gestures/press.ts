import type { PlacedPiece } from '../../core/course/placed.ts';
import { distance } from '../../core/plane/point.ts';
import { ringContains } from '../../core/plane/ring.ts';
import type { DeskState, Touch } from '../desk.ts';
import { words } from '../desk-words.ts';
import { namesOf } from '../names.ts';
import { pieceAt } from '../selection/hit.ts';
import { marqueeGesture } from '../selection/marquee.ts';
import { outlines } from '../selection/outlines.ts';
import { type BendKey, type Keys, toggled } from '../selection/selection.ts';
import { bendGesture, lineAt, ridePointAt } from './bend.ts';
import { type CrossingHandle, crossingAt, crossingGesture, obstacleMeant } from './crossing.ts';
import type { Gesture } from './gesture.ts';
import { moveGesture } from './move.ts';
import { pieceGesture } from './piece.ts';
import { turnGesture } from './turn.ts';
import { type TurnHandle, turnHandle } from './turn-handle.ts';

/** A hand that moved less than this part of the reach has tapped. */
const TAP = 1 / 4;

/** What lies under the finger when it comes down. */
type Target =
  | { readonly kind: 'handle'; readonly handle: TurnHandle }
  | { readonly kind: 'crossing'; readonly crossing: CrossingHandle }
  | { readonly kind: 'ride-point'; readonly key: string }
  | { readonly kind: 'line'; readonly bend: BendKey }
  | { readonly kind: 'piece'; readonly piece: PlacedPiece }
  | { readonly kind: 'chosen' }
  | { readonly kind: 'ground' };

function targetAt(touch: Touch, state: DeskState): Target {
  const { survey, stage } = state;
  const { at, reach } = touch;
  const handle = turnHandle(state, reach);
  if (handle !== null && distance(handle.at, at) <= reach) return { kind: 'handle', handle };
  const crossing = crossingAt(state, at, reach);
  if (crossing !== null) return { kind: 'crossing', crossing };
  const key = stage === 'ride' ? ridePointAt(survey, at, reach) : null;
  if (key !== null) return { kind: 'ride-point', key };
  const piece = pieceAt(survey, at, reach);
  if (piece !== null) return { kind: 'piece', piece };
  if (outlines(state).some((each) => ringContains(each.ring, at))) return { kind: 'chosen' };
  const bend = stage === 'ride' ? lineAt(survey, at, reach) : null;
  return bend === null ? { kind: 'ground' } : { kind: 'line', bend };
}

/** The keys that are chosen while the finger is down. */
function heldKeys(touch: Touch, state: DeskState, target: Target): Keys {
  const { chosen } = state;
  if (target.kind === 'ride-point') return [target.key];
  if (target.kind !== 'piece') return chosen;
  const { obstacle, key } = target.piece;
  if (chosen.includes(obstacle)) return chosen;
  const pieces = chosen.some((each) => each.startsWith(`${obstacle}/`));
  if (touch.adding && inPieces(chosen)) return chosen.includes(key) ? chosen : [...chosen.filter(isPiece), key];
  if (touch.adding) return [...chosen.filter(isWhole), obstacle];
  return pieces ? [key] : [obstacle];
}

function isWhole(key: string): boolean {
  return !/[/:]/.test(key);
}

function isPiece(key: string): boolean {
  return key.includes('/');
}

/** Whether single pieces are chosen: then more of them are added, of any obstacle. */
function inPieces(chosen: Keys): boolean {
  return chosen.some(isPiece);
}

/** The keys that are chosen after a tap. */
function tappedKeys(touch: Touch, state: DeskState, target: Target): Keys {
  const { chosen } = state;
  switch (target.kind) {
    case 'handle':
      return chosen;
    case 'crossing': {
      // A second tap goes back to the obstacle, whose crossings go together.
      const meant = obstacleMeant(state.survey, chosen);
      if (chosen.includes(target.crossing.key)) return meant === undefined ? [] : [meant];
      return [target.crossing.key];
    }
    case 'ride-point':
      return [target.key];
    case 'line':
    case 'chosen':
    case 'ground':
      return touch.adding ? chosen : [];
    case 'piece': {
      const { obstacle, key } = target.piece;
      if (touch.adding && inPieces(chosen)) return toggled(chosen.filter(isPiece), key);
      if (touch.adding) return toggled(chosen.filter(isWhole), obstacle);
      const alone = chosen.length === 1 && chosen[0] === obstacle;
      const inside = chosen.some((each) => each.startsWith(`${obstacle}/`));
      return alone || inside ? [key] : [obstacle];
    }
  }
}

function dragOf(down: Touch, state: DeskState, target: Target): Gesture {
  const keys = heldKeys(down, state, target);
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
        : moveGesture(down, state, keys.filter(isWhole));
    case 'chosen': {
      const piece = state.survey.pieces.find((each) => each.key === keys[0]);
      return piece === undefined ? moveGesture(down, state, keys.filter(isWhole)) : pieceGesture(down, state, piece);
    }
    case 'ground':
      return marqueeGesture(down, state);
  }
}

/** A finger that has come down: a tap until it moves far enough to be a drag of what was under it. */
export function pressGesture(down: Touch, state: DeskState): Gesture {
  const target = targetAt(down, state);
  const tapped = tappedKeys(down, state, target);
  const press: Gesture = {
    course: null,
    chosen: heldKeys(down, state, target),
    guides: [],
    doing: null,
    moved: (touch) =>
      distance(touch.at, down.at) < TAP * down.reach ? press : dragOf(down, state, target).moved(touch),
    done: () => ({
      chosen: tapped,
      label: '',
      said: tapped.length === 0 ? words.choseNothing() : words.chose(namesOf(state.survey, tapped)),
    }),
  };
  return press;
}
