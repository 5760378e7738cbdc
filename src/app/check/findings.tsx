import { useRef } from 'react';
import type { Finding, Weight } from '../../core/checks/check.ts';
import { unwaivedFindings } from '../../core/checks/results/waived.ts';
import { WEIGHT_WORDS } from '../app-words.ts';
import { useDeskState } from '../desk-context.tsx';
import { useView, useViewState } from '../view.ts';
import { FindingCard } from './finding-card.tsx';
import { FixAll } from './fix-all.tsx';
import { type FindingGroup, type Grouping, groupsOf } from './groups.ts';
import { Sweeps } from './sweeps.tsx';
import { visibleFindings } from './visible-findings.ts';
import { WeightSign } from './weight-sign.tsx';

const WEIGHTS: readonly Weight[] = ['must', 'should', 'note'];
const GROUPINGS: Readonly<Record<Grouping, string>> = { obstacle: 'By obstacle', check: 'By check' };

/** What the checks have to say, with what can be done about it. */
export function FindingsPanel() {
  const findings = useDeskState(visibleFindings);
  const isChecked = useDeskState((state) => state.isChecked);
  const survey = useDeskState((state) => state.survey);
  const grouping = useViewState((state) => state.grouping);
  const summary = useRef<HTMLParagraphElement>(null);
  // A button that was pressed goes with its finding: the focus stays in the panel.
  const done = () => summary.current?.focus({ preventScroll: true });
  if (survey.obstacles.length === 0) {
    return <p className="empty">There is nothing to check yet. Set the first obstacle.</p>;
  }
  if (!isChecked) return <p className="empty">Checking…</p>;
  return (
    <div className="findings">
      <p ref={summary} className="findings-summary" tabIndex={-1}>
        <Summary findings={findings} />
      </p>
      {findings.length > 0 && <GroupChoice />}
      <FixAll done={done} />
      {groupsOf(findings, survey, grouping).map((group) => (
        <GroupSection key={`${grouping}:${group.id}`} group={group} done={done} />
      ))}
      <Sweeps />
      <p className="caution">The rule book in force, the show’s officials and the judge decide, not this list.</p>
    </div>
  );
}

function Summary({ findings }: { readonly findings: readonly Finding[] }) {
  const open = unwaivedFindings(findings);
  const waived = findings.length - open.length;
  const isMet = waived === 0 && open.every(({ weight }) => weight === 'note');
  return (
    <>
      {isMet && (
        <span className="empty is-good">
          Nothing to mend: every check that the rule book gives a limit for is met. Walk it once with the tape all the
          same.
        </span>
      )}
      {WEIGHTS.map((weight) => {
        const count = open.filter((finding) => finding.weight === weight).length;
        return count === 0 ? null : (
          <span key={weight} className="count">
            <WeightSign weight={weight} /> {WEIGHT_WORDS[weight]}: {count}
          </span>
        );
      })}
      {open.length === 0 && !isMet && <span className="count">Nothing is open.</span>}
      {waived > 0 && <span className="count">Waived: {waived}</span>}
    </>
  );
}

function GroupChoice() {
  const view = useView();
  const grouping = useViewState((state) => state.grouping);
  return (
    <fieldset className="segments">
      <legend className="visually-hidden">Group the findings</legend>
      {Object.entries(GROUPINGS).map(([id, title]) => (
        <button key={id} type="button" aria-pressed={grouping === id} onClick={() => view.group(id as Grouping)}>
          {title}
        </button>
      ))}
    </fieldset>
  );
}

function GroupSection({ group, done }: { readonly group: FindingGroup; done(): void }) {
  const id = `findings-${group.id}`;
  return (
    <section aria-labelledby={id} data-group={group.id}>
      <h3 id={id} className="group-title">
        {group.number !== undefined && <span className="number">{group.number}</span>}
        <span>
          {group.title} ({group.findings.length})
        </span>
      </h3>
      <ul>
        {group.findings.map((finding) => (
          <FindingCard key={finding.id} finding={finding} done={done} />
        ))}
      </ul>
    </section>
  );
}
