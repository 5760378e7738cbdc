import type { Wall } from '../../core/constraints/constraint.ts';
import type { Arena } from '../../core/course/course.ts';
import { printLength, readLength } from '../../core/measure/length.ts';
import type { Metres } from '../../core/measure/quantity.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { misfitKey, misfits } from '../../desk/commands/hand-commands.ts';
import type { Refusal } from '../../desk/input.ts';
import { nameOf } from '../../desk/names.ts';
import { handWords } from '../../words/hand.ts';
import { setWords } from '../../words/set.ts';
import { terms } from '../../words/terms.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { useView } from '../view.ts';
import { ChoiceField } from './choice-field.tsx';
import { TypedField } from './typed-field.tsx';

/** The walls as a choice shows them. */
export const WALLS: Readonly<Record<Wall, string>> = {
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
  const survey = useDeskState((state) => state.survey);
  const findings = useDeskState((state) => state.findings);
  const view = useView();
  const found = misfits(findings);
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
  const judgeWords = (axis: 'x' | 'y'): string =>
    arena.judge === undefined ? '' : printLength(arena.judge[axis], unit);
  /** Nothing typed takes the judge away; the first number typed puts it in the middle of the other way. */
  const sendJudge = (axis: 'x' | 'y', text: string): Refusal => {
    const place = (judge: Arena['judge']) =>
      desk.edit(setWords.placeTheJudge, (course) => {
        const { judge: _, ...others } = course.arena;
        return { ...course, arena: judge === undefined ? others : { ...others, judge } };
      });
    if (text.trim() === '') {
      if (arena.judge !== undefined) place(undefined);
      return undefined;
    }
    const before = arena.judge ?? { x: arena.length / 2, y: arena.width / 2 };
    const most = axis === 'x' ? arena.length : arena.width;
    return length(text, { least: 0, most }, (value) => place({ ...before, [axis]: value }));
  };
  return (
    <div className="inspector">
      <p className="lead">{setWords.chooseObstacleArenaType}</p>
      <h3>{setWords.theArena}</h3>
      <TypedField
        wide
        label={terms.name}
        value={arena.title}
        send={(title) => {
          const name = title.trim();
          desk.edit(setWords.nameTheArena, (course) => ({ ...course, arena: { ...course.arena, title: name } }));
          return undefined;
        }}
      />
      <div className="fields">
        <TypedField
          label={terms.length}
          value={printLength(arena.length, unit)}
          send={(text) => length(text, side, (value) => desk.changeArena({ length: value }))}
        />
        <TypedField
          label={terms.width}
          value={printLength(arena.width, unit)}
          send={(text) => length(text, side, (value) => desk.changeArena({ width: value }))}
        />
        <ChoiceField
          label={terms.wayIn}
          value={entrance.wall}
          options={WALLS}
          choose={(id) => desk.changeArena({ entrance: { ...entrance, wall: id as Wall } })}
        />
        <TypedField
          label={setWords.itsMiddleAt}
          value={printLength(entrance.at, unit)}
          send={(text) =>
            length(text, { least: 0, most: wall }, (at) => desk.changeArena({ entrance: { ...entrance, at } }))
          }
        />
        <TypedField label={setWords.judgeFromWest} value={judgeWords('x')} send={(text) => sendJudge('x', text)} />
        <TypedField label={setWords.judgeFromSouth} value={judgeWords('y')} send={(text) => sendJudge('y', text)} />
      </div>
      {found.length > 0 && (
        <section className="misfits" aria-label={handWords.misfitsTitle}>
          <h3>{handWords.misfitsTitle}</h3>
          <ul>
            {found.map((finding) => (
              <li key={finding.id}>
                <button
                  type="button"
                  className="link"
                  onClick={() => {
                    desk.choose([misfitKey(finding)]);
                    view.show(finding.at);
                  }}
                >
                  {capitalized(nameOf(survey, misfitKey(finding)))}
                </button>
                <p className="small">{finding.says}</p>
              </li>
            ))}
          </ul>
          <button type="button" className="button" onClick={() => desk.switchStage('check')}>
            {handWords.showInCheck}
          </button>
        </section>
      )}
    </div>
  );
}
