import type { Leg } from '../../core/course/course.ts';
import { passOn } from '../../core/course/edit-ride.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import type { Path } from '../../core/plane/path.ts';
import { tightestRadius } from '../../core/ride/connection.ts';
import { type OtherSide, otherSides } from '../../core/ride/other-sides.ts';
import { rideWords } from '../../words/ride.ts';
import { obstacleTitle } from '../app-words.ts';
import { useDesk, useRestingSurvey } from '../desk-context.tsx';

/** How much longer the other way would be, for a button. A shorter one has something against it: the line took this one. */
function longerWords({ longer, path }: OtherSide, now: Path, unit: LengthUnit): string {
  const by = printLength(Math.abs(longer), unit);
  if (by === printLength(0, unit)) return rideWords.asLong;
  if (longer > 0) return rideWords.longer(by);
  const isTighter = tightestRadius(path) < tightestRadius(now);
  return rideWords.shorter(by, isTighter ? rideWords.onTighterBend : rideWords.lessStraightEnds);
}

/** On which hand the way to an obstacle leaves what it passes: what was chosen, and what is nearly as good. */
export function LegSides({ leg }: { readonly leg: Leg }) {
  const desk = useDesk();
  const { layout, line, course } = useRestingSurvey();
  const way = line.ways.find((each) => each.leg === leg.id);
  const chosen = leg.passes ?? [];
  if (way === undefined) return null;
  const others = otherSides(way.kept);
  if (chosen.length === 0 && others.length === 0) return null;
  const titleOf = (id: string): string => {
    const obstacle = layout.obstacles.find((each) => each.id === id);
    return obstacle === undefined ? id : obstacleTitle(obstacle, layout);
  };
  const pass = (id: string, hand: 'left' | 'right' | null) =>
    desk.edit(rideWords.chooseSide(titleOf(id)), (now) => passOn(now, leg.id, id, hand));
  return (
    <>
      <h3>{rideWords.sidesOfWay}</h3>
      {chosen.map(({ obstacle, hand }) => (
        <div key={obstacle} className="button-row">
          <p className="small">{rideWords.sideAsChosen(titleOf(obstacle), hand)}</p>
          <button type="button" className="button" onClick={() => pass(obstacle, null)}>
            {rideWords.leaveSideLine(titleOf(obstacle))}
          </button>
        </div>
      ))}
      {others.map((other) => (
        <button key={other.obstacle} type="button" className="button" onClick={() => pass(other.obstacle, other.hand)}>
          {rideWords.passWithOn(
            titleOf(other.obstacle),
            other.hand,
            longerWords(other, way.kept.found.path, course.unit),
          )}
        </button>
      ))}
    </>
  );
}
