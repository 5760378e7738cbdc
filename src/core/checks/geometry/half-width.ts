import type { Horse } from '../../horses/horse.ts';
import type { Metres } from '../../measure/quantity.ts';
import type { Figure } from '../../pieces/piece.ts';
import type { LineElement } from '../../ride/line.ts';

/** Whether the horse goes sideways there. */
function isSideways({ facing }: LineElement): boolean {
  return Math.abs(Math.sin(facing)) > 0.5;
}

/**
 * Half the width that the horse takes up across its line: the hooves against what lies on the ground or is walked on,
 * the body against what stands up. While it moves sideways its length counts.
 */
export function halfWidth(horse: Horse, element: LineElement, stands: Figure['stands']): Metres {
  if (stands === 'standing') return (isSideways(element) ? horse.bodyLength.value : horse.bodyWidth.value) / 2;
  return ((isSideways(element) ? horse.wheelbase.value : horse.stance.value) + horse.hoof.value) / 2;
}
