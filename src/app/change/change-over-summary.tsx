import type { ChangeOver } from '../../core/change/change-over.ts';
import { printMinutes } from '../../core/measure/duration.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { counted } from '../../core/text/sentence.ts';

/** How long it takes and how much is carried. */
export function ChangeOverSummary({ plan, unit }: { readonly plan: ChangeOver; readonly unit: LengthUnit }) {
  const { carries, stays, metres, seconds, passes } = plan;
  if (carries.length === 0) {
    return <p className="empty is-good">Nothing has to be carried: {counted(stays.length, 'piece')} lie right.</p>;
  }
  return (
    <dl className="facts">
      <div>
        <dt>Time, an estimate</dt>
        <dd>{printMinutes(seconds)}</dd>
      </div>
      <div>
        <dt>Carried</dt>
        <dd>
          {counted(carries.length, 'carry', 'carries')}, {printLength(metres, unit)}
        </dd>
      </div>
      <div>
        <dt>Stays where it lies</dt>
        <dd>{counted(stays.length, 'piece')}</dd>
      </div>
      {passes > 1 && (
        <div>
          <dt>Passes</dt>
          <dd>{passes}</dd>
        </div>
      )}
    </dl>
  );
}
