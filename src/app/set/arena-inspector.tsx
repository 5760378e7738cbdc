import type { Wall } from '../../core/constraints/constraint.ts';
import type { Arena } from '../../core/course/course.ts';
import { printLength, readLength } from '../../core/measure/length.ts';
import type { Metres } from '../../core/measure/quantity.ts';
import type { Refusal } from '../../desk/input.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from './choice-field.tsx';
import { TypedField } from './typed-field.tsx';

/** The walls as a choice shows them. */
export const WALLS: Readonly<Record<Wall, string>> = {
  west: 'West (left)',
  east: 'East (right)',
  north: 'North (top)',
  south: 'South (bottom)',
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
      return `It must lie between ${printLength(least, unit)} and ${printLength(most, unit)}; ${printLength(read.value, unit)} does not.`;
    }
    use(read.value);
    return undefined;
  };
  const side = { least: LEAST_SIDE, most: MOST_SIDE };
  const { entrance } = arena;
  const wall = entrance.wall === 'south' || entrance.wall === 'north' ? arena.length : arena.width;
  return (
    <div className="inspector">
      <p className="lead">
        Choose an obstacle in the arena to type its numbers. A second click chooses one of its poles.
      </p>
      <h3>The arena</h3>
      <TypedField
        wide
        label="Name"
        value={arena.title}
        send={(title) => {
          change('Name the arena', { title: title.trim() });
          return undefined;
        }}
      />
      <div className="fields">
        <TypedField
          label="Length"
          value={printLength(arena.length, unit)}
          send={(text) => length(text, side, (value) => change('Change the arena', { length: value }))}
        />
        <TypedField
          label="Width"
          value={printLength(arena.width, unit)}
          send={(text) => length(text, side, (value) => change('Change the arena', { width: value }))}
        />
        <ChoiceField
          label="Way in"
          value={entrance.wall}
          options={WALLS}
          choose={(id) =>
            change('Move the way in', {
              entrance: { ...entrance, wall: id as Wall, at: Math.min(entrance.at, wall / 2) },
            })
          }
        />
        <TypedField
          label="Its middle at"
          value={printLength(entrance.at, unit)}
          send={(text) =>
            length(text, { least: 0, most: wall }, (at) => change('Move the way in', { entrance: { ...entrance, at } }))
          }
        />
      </div>
    </div>
  );
}
