import type { Leg } from '../../core/course/course.ts';
import { moveCrossings } from '../../core/course/edit-crossings.ts';
import { printLength, readLength } from '../../core/measure/length.ts';
import { type CrossingHandle, crossingsOn, isRiddenOnOneLine } from '../../desk/gestures/crossing.ts';
import type { Refusal } from '../../desk/input.ts';
import { crossIn, crossKey } from '../../desk/selection/selection.ts';
import { rideWords } from '../../words/ride.ts';
import { pieceTitle } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { TypedField } from '../set/typed-field.tsx';
import { firstEnd } from './ride-words.ts';

/** Where the line of a leg crosses its poles: which handles go together, and each place typed. */
export function LegCrossings({ leg }: { readonly leg: Leg }) {
  const desk = useDesk();
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const all = crossingsOn(survey, leg.id);
  const [first] = all;
  if (first === undefined) return null;
  const { unit } = survey.course;
  const areTogether = isRiddenOnOneLine(survey, leg.id);
  const put =
    (moved: readonly CrossingHandle[]) =>
    (text: string): Refusal => {
      const read = readLength(text, unit);
      if (read.kind === 'refused') return read.why;
      const least = Math.min(...moved.map(({ pole }) => pole.figure.length));
      if (read.value < 0 || read.value > least) return rideWords.crossingRefused(printLength(least, unit));
      desk.edit(rideWords.moveCrossings, (course) =>
        moveCrossings(
          course,
          leg.id,
          new Map(moved.map(({ index, pole }) => [index, read.value / pole.figure.length])),
        ),
      );
      return undefined;
    };
  const from = ({ fraction, pole }: CrossingHandle) => printLength(fraction * pole.figure.length, unit);
  const asked = chosen.map(crossIn).find((each) => each?.leg === leg.id);
  const usual = areTogether ? 'all' : 'each';
  return (
    <>
      <h3>{rideWords.whereLineCrosses}</h3>
      {all.length > 1 && (
        <ChoiceField
          label={rideWords.aHandleMoves}
          value={asked === undefined || asked === null ? usual : `${asked.index}`}
          options={{
            ...(areTogether ? {} : { each: rideWords.draggedPole }),
            all: rideWords.allPolesTogether,
            ...Object.fromEntries(all.map(({ index, pole }) => [`${index}`, rideWords.alone(pieceTitle(pole))])),
          }}
          choose={(to) =>
            desk.choose([to === usual ? leg.obstacle : crossKey(leg.id, to === 'all' ? 'all' : Number(to))])
          }
        />
      )}
      <p className="small">{rideWords.fromEndOfPole(firstEnd(first.pole.pose.angle))}</p>
      <div className="fields">
        {areTogether && <TypedField label={rideWords.allPoles} value={alike(all, from)} send={put(all)} />}
        {all.map((each) => (
          <TypedField key={each.index} label={pieceTitle(each.pole)} value={from(each)} send={put([each])} />
        ))}
      </div>
    </>
  );
}

/** The one value, or nothing where they differ. */
function alike(all: readonly CrossingHandle[], from: (each: CrossingHandle) => string): string {
  const values = new Set(all.map(from));
  return values.size === 1 ? ([...values][0] ?? '') : '';
}
