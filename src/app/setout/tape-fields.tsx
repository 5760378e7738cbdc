import type { CrewChoice } from '../../core/course/course.ts';
import { setCrew } from '../../core/course/edit-crew.ts';
import { printLength, readLength } from '../../core/measure/length.ts';
import type { Metres } from '../../core/measure/quantity.ts';
import { setOutCrewOf } from '../../core/setout/crew.ts';
import type { Refusal } from '../../desk/input.ts';
import { changeWords } from '../../words/change.ts';
import { setoutWords } from '../../words/setout.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { TypedField } from '../set/typed-field.tsx';

const PEOPLE = { 1: changeWords.onePerson, 2: changeWords.two, 3: changeWords.three, 4: changeWords.four } as const;
const TAPES = { 1: setoutWords.oneTape, 2: changeWords.two, 3: changeWords.three } as const;
const MARKED = { ft: setoutWords.inFeet, m: setoutWords.inMetres } as const;
const RIGHT_ANGLES = { 'three-four-five': setoutWords.byTriangle, board: setoutWords.byBoard } as const;
/** What a file takes. */
const [SHORTEST, LONGEST]: readonly [Metres, Metres] = [3, 100];

/** Who sets out, and with what. */
export function TapeFields() {
  const desk = useDesk();
  const course = useDeskState((state) => state.course);
  const { people, tapes, tape, marked, rightAngle } = setOutCrewOf(course);
  const change = (next: Partial<CrewChoice>) =>
    desk.edit(setoutWords.chooseTheTapes, (now) => setCrew(now, { people, ...now.crew, ...next }));
  const chooseTape = (text: string): Refusal => {
    const read = readLength(text, marked);
    if (read.kind === 'refused') return read.why;
    if (read.value < SHORTEST || read.value > LONGEST) {
      return setoutWords.tapeRefused(printLength(SHORTEST, marked), printLength(LONGEST, marked));
    }
    change({ tape: read.value });
    return undefined;
  };
  // The values of a select are texts: its own keys.
  return (
    <div className="fields">
      <ChoiceField
        label={setoutWords.people}
        value={String(people)}
        options={PEOPLE}
        choose={(text) => change({ people: Number(text) as CrewChoice['people'] })}
      />
      <ChoiceField
        label={setoutWords.tapes}
        value={String(tapes)}
        options={TAPES}
        choose={(text) => change({ tapes: Number(text) as 1 | 2 | 3 })}
      />
      <TypedField label={setoutWords.lengthOfTape} value={printLength(tape, marked)} send={chooseTape} />
      <ChoiceField
        label={setoutWords.markedIn}
        value={marked}
        options={MARKED}
        choose={(text) => change({ marked: text as keyof typeof MARKED })}
      />
      <ChoiceField
        label={setoutWords.rightAngles}
        value={rightAngle}
        options={RIGHT_ANGLES}
        choose={(text) => change({ rightAngle: text as keyof typeof RIGHT_ANGLES })}
      />
    </div>
  );
}
