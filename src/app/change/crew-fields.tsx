import { crewOf } from '../../core/change/crew.ts';
import { type CrewChoice, DEFAULT_CREW } from '../../core/course/course.ts';
import { setCrew } from '../../core/course/edit-crew.ts';
import { printLength, readLength } from '../../core/measure/length.ts';
import type { Metres } from '../../core/measure/quantity.ts';
import type { Refusal } from '../../desk/input.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { TypedField } from '../set/typed-field.tsx';

const PEOPLE = { 1: 'One person', 2: 'Two', 3: 'Three', 4: 'Four' } as const;
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
    if (isPeople(count)) desk.edit('Choose the crew', (now) => setCrew(now, { ...now.crew, people: count }));
  };
  const place = (axis: 'x' | 'y', text: string): Refusal => {
    const read = readLength(text, unit);
    if (read.kind === 'refused') return read.why;
    const most = (axis === 'x' ? arena.length : arena.width) + FARTHEST;
    if (read.value < -FARTHEST || read.value > most) {
      return `The truck must stand within ${printLength(FARTHEST, unit)} of the arena.`;
    }
    desk.edit('Move the truck', (now) => setCrew(now, { people, truckAt: { ...truckAt, [axis]: read.value } }));
    return undefined;
  };
  return (
    <div className="fields">
      <ChoiceField label="Crew" value={String(people)} options={PEOPLE} choose={choosePeople} />
      <TypedField
        label="Truck from the west wall"
        value={printLength(truckAt.x, unit)}
        send={(text) => place('x', text)}
      />
      <TypedField
        label="Truck from the south wall"
        value={printLength(truckAt.y, unit)}
        send={(text) => place('y', text)}
      />
      {isPlaced && (
        <button
          type="button"
          className="button"
          onClick={() => desk.edit('Truck to the entrance', (now) => setCrew(now, { people }))}
        >
          Truck to the entrance
        </button>
      )}
    </div>
  );
}
