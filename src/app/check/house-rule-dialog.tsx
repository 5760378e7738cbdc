import { type FormEvent, useState } from 'react';
import { checkWords } from '../../words/check.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { Dialog } from '../dialog.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { PlainField } from '../set/plain-field.tsx';
import {
  ASKED,
  bookWords,
  type HouseRuleErrors,
  limitTitle,
  readHouseRule,
  type TypedHouseRule,
  withHouseRule,
} from './house-rules.ts';

const TITLES = Object.fromEntries(ASKED.map((name) => [name, limitTitle(name)]));

/** Overrides one limit of the rule book for this course. */
export function HouseRuleDialog({ close }: { close(): void }) {
  const desk = useDesk();
  const course = useDeskState((state) => state.course);
  const [typed, setTyped] = useState<TypedHouseRule>({ name: ASKED[0] ?? '', least: '', most: '', reason: '' });
  const [refusals, setRefusals] = useState<HouseRuleErrors>({});
  const write = (next: Partial<TypedHouseRule>) => {
    setTyped({ ...typed, ...next });
    setRefusals({});
  };
  const put = (event: FormEvent) => {
    event.preventDefault();
    const read = readHouseRule(typed, course.unit);
    if ('refusals' in read) {
      setRefusals(read.refusals);
      return;
    }
    desk.edit(checkWords.houseRule(limitTitle(typed.name)), (now) => withHouseRule(now, typed.name, read.rule));
    close();
  };
  return (
    <Dialog hasVerb title={checkWords.setHouseRule} close={close}>
      <form className="new-line" onSubmit={put} noValidate>
        <p className="small">{checkWords.houseRuleTakesPlace}</p>
        <ChoiceField
          label={checkWords.whatItBounds}
          value={typed.name}
          options={TITLES}
          choose={(name) => write({ name })}
        />
        <p className="small">{bookWords(course, typed.name)}</p>
        <div className="fields">
          <PlainField
            label={checkWords.least}
            text={typed.least}
            refusal={refusals.least}
            write={(least) => write({ least })}
          />
          <PlainField
            label={checkWords.most}
            text={typed.most}
            refusal={refusals.most}
            write={(most) => write({ most })}
          />
          <PlainField
            wide
            mostSigns={2000}
            label={checkWords.reason}
            hint={checkWords.whoDecidedWhy}
            text={typed.reason}
            refusal={refusals.reason}
            write={(reason) => write({ reason })}
          />
        </div>
        <button type="submit" className="button primary">
          {checkWords.setTheHouseRule}
        </button>
      </form>
    </Dialog>
  );
}
