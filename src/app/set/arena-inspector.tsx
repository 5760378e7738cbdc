import type { Wall } from '../../core/constraints/constraint.ts';
import type { Arena } from '../../core/course/course.ts';
import { printLength, readLength } from '../../core/measure/length.ts';
import type { Metres } from '../../core/measure/quantity.ts';
import type { Refusal } from '../../desk/input.ts';
import { setWords } from '../../words/set.ts';
import { terms } from '../../words/terms.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from './choice-field.tsx';
import { TypedField } from './typed-field.tsx';

const WALLS: Readonly<Record<Wall, string>> = {
  west: setWords.westLeft,
  east: setWords.eastRight,
  north: setWords.northTop,
  south: setWords.southBottom,
};
/** As the file format has it. */
const LEAST_SIDE: Metres = 3;
const MOST_SIDE: Metres = 500;

/** The exact numbers of the arena, while nothing in it is chosen. */
export function ArenaInspector() {
  const desk = useDesk();
  const { arena, unit } = useDeskState((state) => state.course);
  const change = (label: string, next: Partial<Arena>) =>
    desk.edit(label, (course) => ({ ...course, arena: { ...course.arena, ...next } }));
  const length = (
    text: string,
    { least, most }: { least: Metres; most: Metres },
    use: (value: Metres) => void,
  ): Refusal => {
    const read = readLength(text, unit);
    if (read.kind === 'refused') return read.why;
    if (read.value < least || read.value > most) {
      return setWords.outOfRange(printLength(least, unit), printLength(most, unit), printLength(read.value, unit));
    }
    use(read.value);
    return undefined;
  };
  const side = { least: LEAST_SIDE, most: MOST_SIDE };
  const { entrance } = arena;
  const wall = entrance.wall === 'south' || entrance.wall === 'north' ? arena.length : arena.width;
  return (
    <div className="inspector">
      <p className="lead">{setWords.chooseObstacleArenaType}</p>
      <h3>{setWords.theArena}</h3>
      <TypedField
        wide
        label={terms.name}
        value={arena.title}
        send={(title) => {
          change(setWords.nameTheArena, { title: title.trim() });
          return undefined;
        }}
      />
      <div className="fields">
        <TypedField
          label={terms.length}
          value={printLength(arena.length, unit)}
          send={(text) => length(text, side, (value) => change(setWords.changeTheArena, { length: value }))}
        />
        <TypedField
          label={terms.width}
          value={printLength(arena.width, unit)}
          send={(text) => length(text, side, (value) => change(setWords.changeTheArena, { width: value }))}
        />
        <ChoiceField
          label={terms.wayIn}
          value={entrance.wall}
          options={WALLS}
          choose={(id) =>
            change(setWords.moveWay, {
              entrance: { ...entrance, wall: id as Wall, at: Math.min(entrance.at, wall / 2) },
            })
          }
        />
        <TypedField
          label={setWords.itsMiddleAt}
          value={printLength(entrance.at, unit)}
          send={(text) =>
            length(text, { least: 0, most: wall }, (at) => change(setWords.moveWay, { entrance: { ...entrance, at } }))
          }
        />
      </div>
    </div>
  );
}
