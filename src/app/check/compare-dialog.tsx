import { useMemo, useState } from 'react';
import type { Finding } from '../../core/checks/check.ts';
import { type BookComparison, bookComparison } from '../../core/checks/results/compared.ts';
import { RULEBOOKS } from '../../core/checks/rulebooks/rulebooks.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { checkWords } from '../../words/check.ts';
import { WEIGHT_WORDS } from '../app-words.ts';
import { useDeskState } from '../desk-context.tsx';
import { Dialog } from '../dialog.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { limitWords } from './book-words.ts';
import { WeightSign } from './weight-sign.tsx';

/** The course as it lies under two rule books. */
export function CompareDialog({ close }: { close(): void }) {
  const course = useDeskState((state) => state.course);
  const others = RULEBOOKS.filter(({ id }) => id !== course.rulebook.id);
  const [other, setOther] = useState(others[0]?.id ?? course.rulebook.id);
  const outcome = useMemo(() => bookComparison(course, course.rulebook.id, other), [course, other]);
  return (
    <Dialog wide title={checkWords.compareTwoRuleBooks} close={close}>
      <div className="compare">
        <ChoiceField
          label={checkWords.sameCourseUnder(outcome.a.title)}
          value={other}
          options={Object.fromEntries(others.map(({ id, title }) => [id, title]))}
          choose={setOther}
        />
        <FindingsTable outcome={outcome} />
        <LimitsTable outcome={outcome} unit={course.unit} />
        <p className="caution">{checkWords.houseRulesHoldUnder}</p>
      </div>
    </Dialog>
  );
}

function FindingsTable({ outcome }: { readonly outcome: BookComparison }) {
  const { a, b, both, onlyA, onlyB, changed } = outcome;
  return (
    <>
      <p role="status">
        <strong>
          {checkWords.foundByBoth(both.length + changed.length, onlyA.length, a.title, onlyB.length, b.title)}
        </strong>
      </p>
      <table className="compared">
        <thead>
          <tr>
            <th scope="col">{checkWords.foundBy}</th>
            <th scope="col">{checkWords.whatIsFound}</th>
          </tr>
        </thead>
        <tbody>
          <Rows by="only-a" title={checkWords.only(a.title)} findings={onlyA} />
          <Rows by="only-b" title={checkWords.only(b.title)} findings={onlyB} />
          {changed.map((pair, i) => (
            <tr key={pair.a.id} data-by="changed">
              {i === 0 && (
                <th scope="rowgroup" rowSpan={changed.length}>
                  {checkWords.bothWithOtherLimits}
                </th>
              )}
              <td>
                <FindingLine finding={pair.a} by={a.title} />
                <FindingLine finding={pair.b} by={b.title} />
              </td>
            </tr>
          ))}
          <Rows by="both" title={checkWords.both} findings={both} />
        </tbody>
      </table>
    </>
  );
}

function Rows({
  by,
  title,
  findings,
}: {
  readonly by: string;
  readonly title: string;
  readonly findings: readonly Finding[];
}) {
  if (findings.length === 0) {
    return (
      <tr data-by={by}>
        <th scope="row">{title}</th>
        <td className="small">{checkWords.nothing}</td>
      </tr>
    );
  }
  return findings.map((finding, i) => (
    <tr key={finding.id} data-by={by}>
      {i === 0 && (
        <th scope="rowgroup" rowSpan={findings.length}>
          {title}
        </th>
      )}
      <td>
        <FindingLine finding={finding} />
      </td>
    </tr>
  ));
}

function FindingLine({ finding, by }: { readonly finding: Finding; readonly by?: string }) {
  return (
    <p className="finding-line">
      <WeightSign weight={finding.weight} hollow={finding.waived !== undefined} />
      <span>
        {by !== undefined && <strong>{by}: </strong>}
        {finding.says}
        <span className="visually-hidden"> {WEIGHT_WORDS[finding.weight]}.</span>
      </span>
    </p>
  );
}

function LimitsTable({
  outcome: { a, b, limits },
  unit,
}: {
  readonly outcome: BookComparison;
  readonly unit: LengthUnit;
}) {
  if (limits.length === 0) return null;
  return (
    <details className="fold">
      <summary>{checkWords.whereTwoBooksDiffer(limits.length)}</summary>
      <table className="compared">
        <thead>
          <tr>
            <th scope="col">{checkWords.what}</th>
            <th scope="col">{a.title}</th>
            <th scope="col">{b.title}</th>
          </tr>
        </thead>
        <tbody>
          {limits.map((each) => (
            <tr key={each.name}>
              <th scope="row">{each.title}</th>
              <td>{limitWords(each.a, unit)}</td>
              <td>{limitWords(each.b, unit)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
