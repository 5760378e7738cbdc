import type { ChangeOver } from '../../core/change/change-over.ts';
import { printMinutes } from '../../core/measure/duration.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { changeWords } from '../../words/change.ts';
import { terms } from '../../words/terms.ts';

/** How long it takes and how much is carried. */
export function ChangeOverSummary({ plan, unit }: { readonly plan: ChangeOver; readonly unit: LengthUnit }) {
  const { carries, stays, metres, seconds, passes } = plan;
  if (carries.length === 0) {
    return <p className="empty is-good">{changeWords.nothingToCarry(terms.pieces(stays.length))}</p>;
  }
  return (
    <dl className="facts">
      <div>
        <dt>{changeWords.timeAnEstimate}</dt>
        <dd>{printMinutes(seconds)}</dd>
      </div>
      <div>
        <dt>{changeWords.carried}</dt>
        <dd>
          {terms.carries(carries.length)}, {printLength(metres, unit)}
        </dd>
      </div>
      <div>
        <dt>{changeWords.staysWhereLies}</dt>
        <dd>{terms.pieces(stays.length)}</dd>
      </div>
      {passes > 1 && (
        <div>
          <dt>{changeWords.passes}</dt>
          <dd>{passes}</dd>
        </div>
      )}
    </dl>
  );
}
