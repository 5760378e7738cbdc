import { useState } from 'react';
import { type LayoutDifference, layoutDifferences, piecesTouched } from '../../core/change/differences.ts';
import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { counted, obstacleTitle } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';

/** What the crew changes to make the shown layout out of another one. */
export function DifferencesPanel() {
  const desk = useDesk();
  const course = useDeskState((state) => state.course);
  const shown = useDeskState((state) => state.survey.layout);
  const [wanted, setWanted] = useState('');
  const others = course.layouts.filter((layout) => layout.id !== shown.id);
  const from = others.find((layout) => layout.id === wanted) ?? others[0];
  if (from === undefined) {
    return (
      <p className="empty">
        There is one layout. Copy it, change the copy for the next class, and see here what the crew has to move.
      </p>
    );
  }
  const list = layoutDifferences(from, shown);
  return (
    <div className="inspector">
      <ChoiceField
        label={`To get ${shown.title}, starting from`}
        value={from.id}
        options={Object.fromEntries(others.map((layout) => [layout.id, layout.title]))}
        choose={setWanted}
      />
      {list.length === 0 ? (
        <p className="empty is-good">The two lie the same on the ground.</p>
      ) : (
        <>
          <p className="lead">
            {counted(list.length, 'obstacle')} to touch, {counted(piecesTouched(list), 'piece')} to carry.
          </p>
          <ul className="rows">
            {list.map((each) => (
              <li key={`${each.kind} ${each.obstacle.id}`}>
                <button
                  type="button"
                  className="row"
                  disabled={each.kind === 'went'}
                  onClick={() => desk.choose([each.obstacle.id])}
                >
                  <span className="row-title">
                    {obstacleTitle(each.obstacle, each.kind === 'went' ? from : shown)}
                    <small>{difference(each, course.unit)}</small>
                  </span>
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

function difference(each: LayoutDifference, unit: LengthUnit): string {
  switch (each.kind) {
    case 'went':
      return `Take away ${counted(each.obstacle.pieces.length, 'piece')}`;
    case 'came':
      return `Set ${counted(each.obstacle.pieces.length, 'piece')}`;
    case 'rebuilt':
      return 'Set anew: other sizes or gaps';
    case 'moved': {
      const turn = Math.abs(each.turn) < 0.005 ? '' : `, turn by ${printAngle(Math.abs(each.turn))}`;
      return `Move by ${printLength(each.by, unit)}${turn}`;
    }
  }
}
