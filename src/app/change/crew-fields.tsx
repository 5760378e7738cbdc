import { crewOf } from '../../core/change/crew.ts';
import { type CrewChoice, DEFAULT_CREW } from '../../core/course/course.ts';
import { setCrew } from '../../core/course/edit-crew.ts';
import { printLength, readLength } from '../../core/measure/length.ts';
import type { Metres } from '../../core/measure/quantity.ts';
import type { Refusal } from '../../desk/input.ts';
import { changeWords } from '../../words/change.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { TypedField } from '../set/typed-field.tsx';

const PEOPLE = { 1: changeWords.onePerson, 2: changeWords.two, 3: changeWords.three, 4: changeWords.four } as const;
/** The truck may stand outside the arena, but not in the next county. */
const FARTHEST: Metres = 100;

function isPeople(count: number): count is CrewChoice['people'] {
  return count in PEOPLE;
}

/** Who carries, and where the truck stands. */
export function CrewFields() {
  const desk = useDesk();
  const crew = useDeskState((state) => state.course.crew);
  const arena = useDeskState((state) => state.course.arena);
  const unit = useDeskState((state) => state.course.unit);
  const { people } = crew ?? DEFAULT_CREW;
  const { truckAt } = crewOf({ arena, ...(crew === undefined ? {} : { crew }) });
  const isPlaced = crew?.truckAt !== undefined;
  const choosePeople = (text: string) => {
    const count = Number(text);
    if (isPeople(count)) desk.edit(changeWords.chooseTheCrew, (now) => setCrew(now, { ...now.crew, people: count }));
  };
  const place = (axis: 'x' | 'y', text: string): Refusal => {
    const read = readLength(text, unit);
    if (read.kind === 'refused') return read.why;
    const most = (axis === 'x' ? arena.length : arena.width) + FARTHEST;
    if (read.value < -FARTHEST || read.value > most) {
      return changeWords.truckRefused(printLength(FARTHEST, unit));
    }
    desk.edit(changeWords.moveTheTruck, (now) => setCrew(now, { people, truckAt: { ...truckAt, [axis]: read.value } }));
    return undefined;
  };
  return (
    <div className="fields">
      <ChoiceField label={changeWords.crew} value={String(people)} options={PEOPLE} choose={choosePeople} />
      <TypedField
        label={changeWords.truckFromWestWall}
        value={printLength(truckAt.x, unit)}
        send={(text) => place('x', text)}
      />
      <TypedField
        label={changeWords.truckFromSouthWall}
        value={printLength(truckAt.y, unit)}
        send={(text) => place('y', text)}
      />
      {isPlaced && (
        <button
          type="button"
          className="button"
          onClick={() => desk.edit(changeWords.truckToEntrance, (now) => setCrew(now, { people }))}
        >
          {changeWords.truckToEntrance}
        </button>
      )}
    </div>
  );
}
