import type { Level } from '../../core/course/course.ts';
import { checkWords } from '../../words/check.ts';
import { LEVEL_WORDS } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { levelChanges } from './book-words.ts';

/** Who the class is for, and what that changes in what is asked. */
export function LevelChoice() {
  const desk = useDesk();
  const course = useDeskState((state) => state.course);
  const { level } = course.class;
  const changes = levelChanges(course);
  return (
    <>
      <ChoiceField
        label={checkWords.levelClass}
        value={level}
        options={LEVEL_WORDS}
        choose={(next) =>
          desk.edit(checkWords.changeTheLevel, (now) => ({ ...now, class: { ...now.class, level: next as Level } }))
        }
      />
      {changes.length === 0 ? (
        <p className="small">{checkWords.thisLevelChangesNothing}</p>
      ) : (
        <section aria-label={checkWords.whatThisLevelChanges}>
          <h3>{checkWords.whatThisLevelChanges}</h3>
          <ul className="said-list">
            {changes.map(({ title, here, open, source }) => (
              <li key={title}>
                {title}: <strong>{here}</strong>
                <small>
                  {open === 'no limit' ? checkWords.noLimitOpenClass : checkWords.openClass(open)}
                  {source === '' ? '' : `; ${source}`}
                </small>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
