import { Plus, Scale, X } from 'lucide-react';
import { useState } from 'react';
import { RULEBOOKS, rulebookById, UNDECIDED } from '../../core/checks/rulebooks/rulebooks.ts';
import { checkWords } from '../../words/check.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { CompareDialog } from './compare-dialog.tsx';
import { HouseRuleDialog } from './house-rule-dialog.tsx';
import { houseWords, limitTitle, withoutHouseRule } from './house-rules.ts';
import { LevelChoice } from './level.tsx';
import { Silences } from './silences.tsx';

/** Which rule book judges the course, and what the show overrides. */
export function RuleBookPanel() {
  const desk = useDesk();
  const choice = useDeskState((state) => state.course.rulebook);
  const book = rulebookById(choice.id);
  const [isComparing, setComparing] = useState(false);
  return (
    <div className="inspector one-column">
      <ChoiceField
        label={checkWords.judgedBy}
        value={choice.id}
        options={Object.fromEntries([...RULEBOOKS, UNDECIDED].map((each) => [each.id, each.title]))}
        choose={(id) =>
          desk.edit(checkWords.changeRuleBook, (course) => ({ ...course, rulebook: { ...course.rulebook, id } }))
        }
      />
      {book !== undefined && (
        <>
          <p className="book">
            <strong>{book.title}</strong>, {book.edition}
          </p>
          <p className="small">{book.about}</p>
          <button type="button" className="button" aria-haspopup="dialog" onClick={() => setComparing(true)}>
            <Scale aria-hidden="true" />
            {checkWords.compareWithAnotherBook}
          </button>
          {isComparing && <CompareDialog close={() => setComparing(false)} />}
        </>
      )}
      <LevelChoice />
      <HouseRules />
      <Silences />
      <p className="caution">{checkWords.ruleBookForceShows}</p>
    </div>
  );
}

function HouseRules() {
  const desk = useDesk();
  const house = useDeskState((state) => state.course.rulebook.house);
  const unit = useDeskState((state) => state.course.unit);
  const [isSetting, setSetting] = useState(false);
  const rules = Object.entries(house);
  return (
    <section aria-label={checkWords.houseRules}>
      <h3>{checkWords.houseRules}</h3>
      {rules.length === 0 ? (
        <p className="small">{checkWords.noneEveryLimitBooks}</p>
      ) : (
        <ul className="house">
          {rules.map(([name, rule]) => (
            <li key={name}>
              <span className="row-title">
                {limitTitle(name)}: <strong>{houseWords(name, rule, unit)}</strong>
                <small>
                  <span className="tag">{checkWords.houseRuleTag}</span> {rule.reason}
                </small>
              </span>
              <button
                type="button"
                className="quiet"
                aria-label={checkWords.removeHouseRule(limitTitle(name))}
                title={checkWords.removeThisHouseRule}
                onClick={() =>
                  desk.edit(checkWords.removeHouseRule(limitTitle(name)), (course) => withoutHouseRule(course, name))
                }
              >
                <X aria-hidden="true" />
              </button>
            </li>
          ))}
        </ul>
      )}
      <button type="button" className="button" aria-haspopup="dialog" onClick={() => setSetting(true)}>
        <Plus aria-hidden="true" />
        {checkWords.setHouseRule}
      </button>
      {isSetting && <HouseRuleDialog close={() => setSetting(false)} />}
    </section>
  );
}
