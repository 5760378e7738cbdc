import { LocateFixed, RotateCcw, Wrench } from 'lucide-react';
import { useState } from 'react';
import type { Finding } from '../../core/checks/check.ts';
import { unwaiveFinding, waiveFinding } from '../../core/checks/results/waived.ts';
import { findingsWords } from '../../words/findings.ts';
import { useDesk } from '../desk-context.tsx';
import { useView } from '../view.ts';
import { useRemedies } from './remedies.ts';
import { WaiveForm } from './waive-form.tsx';

interface ToolsProps {
  readonly finding: Finding;
  /** Called when something was done about the finding. */
  done(id: string): void;
}

/** What can be done about a finding: its fixes, to see where it is, to waive it. */
export function FindingTools({ finding, done }: ToolsProps) {
  const desk = useDesk();
  const view = useView();
  const [isAsking, setAsking] = useState(false);
  const isWaived = finding.waived !== undefined;
  const show = () => {
    view.show(finding.at);
    desk.choose(finding.keys.slice(0, 1));
    view.point({ kind: 'finding', id: finding.id });
  };
  const waive = (reason: string) => {
    desk.edit(findingsWords.stepWaive(finding.says), (course) => waiveFinding(course, finding.id, reason));
    setAsking(false);
    done(finding.id);
  };
  const unwaive = () => {
    desk.edit(findingsWords.stepUnwaive(finding.says), (course) => unwaiveFinding(course, finding));
    done(finding.id);
  };
  return (
    <>
      <div className="finding-tools">
        {!isWaived && <Fixes finding={finding} done={done} />}
        <button type="button" className="button" onClick={show}>
          <LocateFixed aria-hidden="true" />
          {findingsWords.show}
        </button>
        {isWaived ? (
          <button type="button" className="button" onClick={unwaive}>
            <RotateCcw aria-hidden="true" />
            {findingsWords.unwaive}
          </button>
        ) : (
          !isAsking && (
            <button type="button" className="button" onClick={() => setAsking(true)}>
              <span>
                {findingsWords.waive}
                <span className="visually-hidden">{findingsWords.withReason}</span>…
              </span>
            </button>
          )
        )}
      </div>
      {isAsking && <WaiveForm waive={waive} close={() => setAsking(false)} />}
    </>
  );
}

function Fixes({ finding, done }: ToolsProps) {
  const desk = useDesk();
  const remedies = useRemedies(finding);
  if (remedies === undefined) return <p className="trying">{findingsWords.trying}</p>;
  return remedies.map((remedy) => (
    <button
      key={remedy.says}
      type="button"
      className="button remedy"
      onClick={() => {
        desk.edit(remedy.says, (course) => remedy.apply(course));
        done(finding.id);
      }}
    >
      <Wrench aria-hidden="true" />
      {remedy.says}
    </button>
  ));
}
