/** How the menu of what is chosen is asked for: the second button, a long press, the menu key. */
import type { Point } from '../../../core/plane/point.ts';
import type { Desk } from '../../../desk/desk.ts';
import type { KeyPress } from '../../../desk/input.ts';
import { pieceUnderPoint } from '../../../desk/selection/hit.ts';
import { boundsOfPieces, chosenPieces } from '../../../desk/selection/selection.ts';
import type { View } from '../../view.ts';
import { groundOf, screenOf } from '../camera.ts';
import type { HandStore } from './hand-store.ts';
import { PICK_RADIUS } from './pick-radius.ts';

interface Places {
  readonly desk: Desk;
  readonly view: View;
  readonly hand: HandStore;
}

/** Opens the menu for the thing at a place, which is chosen first where it is not; on open ground there is none. */
export function openMenu({ desk, view, hand }: Places, at: Point<'screen'>): void {
  const { camera } = view.state();
  const { survey, chosen } = desk.state();
  const piece = pieceUnderPoint(survey, groundOf(camera, at), PICK_RADIUS.finger / camera.scale);
  if (piece === null) return;
  if (!chosen.includes(piece.key) && !chosen.includes(piece.obstacle)) desk.choose([piece.obstacle]);
  hand.change({ menu: at, finger: null });
}

/** The same by the keyboard: beside what is chosen. */
export function openMenuAtChosen({ desk, view, hand }: Places): void {
  const { survey, chosen } = desk.state();
  if (chosen.length === 0) return;
  const { camera, size } = view.state();
  const box = boundsOfPieces(chosenPieces(survey, chosen));
  const middle = { x: size.width / 2, y: size.height / 2 };
  const at = box === null ? middle : screenOf(camera, { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 });
  hand.change({ menu: at });
}

export function isMenuKey({ key, shift, mod, alt }: KeyPress): boolean {
  return (key === 'ContextMenu' || (key === 'F10' && shift)) && !mod && !alt;
}

/** Whether a request for a menu comes from a finger that stays: Chromium sends it as a pointer event of a touch. */
export function isFromFinger(event: MouseEvent): boolean {
  return 'pointerType' in event && event.pointerType === 'touch';
}
