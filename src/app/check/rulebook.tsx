import { RULEBOOKS, rulebookById } from '../../core/checks/rulebooks.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { counted } from '../words.ts';

/** Which rule book judges the course. */
export function RuleBookPanel() {
  const desk = useDesk();
  const choice = useDeskState((state) => state.course.rulebook);
  const book = rulebookById(choice.id);
  const house = Object.keys(choice.house).length;
  return (
    <div className="tape">
      <ChoiceField
        label="Judged by"
        value={choice.id}
        options={Object.fromEntries(RULEBOOKS.map((each) => [each.id, each.title]))}
        choose={(id) =>
          desk.edit('Change the rule book', (course) => ({ ...course, rulebook: { ...course.rulebook, id } }))
        }
      />
      {book !== undefined && (
        <>
          <p className="book">
            <strong>{book.title}</strong>, {book.edition}
          </p>
          <p className="small">{book.about}</p>
        </>
      )}
      {house > 0 && <p className="small">{counted(house, 'house rule')} of this course come first.</p>}
      <p className="caution">
        The rule book in force, the show’s officials and the judge decide. These checks only help you to look.
      </p>
    </div>
  );
}
