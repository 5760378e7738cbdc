import { Plus } from 'lucide-react';
import type { RefObject } from 'react';
import { addLeg } from '../../core/course/edit-ride.ts';
import type { Obstacle } from '../../core/obstacles/obstacle.ts';
import { rideWords } from '../../words/ride.ts';
import { useDesk } from '../desk-context.tsx';

/** Rides an obstacle at the end of the go, for the first time or once more. */
export function AddToGo({
  obstacle,
  title,
  count,
  button,
}: {
  readonly obstacle: Obstacle;
  readonly title: string;
  /** How often it is ridden already. */
  readonly count: number;
  readonly button?: RefObject<HTMLButtonElement | null>;
}) {
  const desk = useDesk();
  return (
    <button
      ref={button}
      type="button"
      className={count === 0 ? 'button primary large apart' : 'button apart'}
      onClick={() => desk.edit(rideWords.add(title), (course) => addLeg(course, obstacle.id))}
    >
      <Plus aria-hidden="true" />
      {count === 0 ? rideWords.addToOrder : rideWords.addOnceMore}
    </button>
  );
}
