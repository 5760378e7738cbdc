import { LocateFixed, RotateCcw, Wrench } from 'lucide-react';
import { useId, useState } from 'react';
import type { Finding } from '../../core/checks/check.ts';
import { unwaiveFinding, waiveFinding } from '../../core/checks/results/waived.ts';
import { limitsOf } from '../../core/checks/rulebooks/rulebooks.ts';
import { WEIGHT_WORDS } from '../app-words.ts';
import { useDesk, useDeskState, useRestingSurvey } from '../desk-context.tsx';
import { useView, useViewState } from '../view.ts';
import { BandGauge } from './band-gauge.tsx';
import { type Behind, limitBehind, SOURCE_WORDS } from './limit-behind.ts';
import { useRemedies } from './remedies.ts';
import { sweepFor } from './sweep-words.ts';
import { WaiveForm } from './waive-form.tsx';
import { WeightSign } from './weight-sign.tsx';

/** One finding: its weight, what it says, why it matters, its source, and its fixes. */
export function FindingCard({ finding, done }: { readonly finding: Finding; done(): void }) {
  const view = useView();
  const id = useId();
  const course = useDeskState((state) => state.course);
  const isPointed = useViewState(({ pointed }) => pointed?.kind === 'finding' && pointed.id === finding.id);
  const behind = limitBehind(finding, limitsOf(course));
  const isWaived = finding.waived !== undefined;
  const sweep = sweepFor(finding, useRestingSurvey());
  const point = () => view.point({ kind: 'finding', id: finding.id });
  return (
    <li
      className={`finding ${finding.weight} ${isPointed ? 'is-pointed' : ''} ${isWaived ? 'is-waived' : ''}`}
      data-finding={finding.check}
      onPointerEnter={point}
      onPointerLeave={() => view.point(null)}
      onFocus={point}
    >
      <article aria-labelledby={id}>
        <p className="finding-weight">
          <WeightSign weight={finding.weight} hollow={isWaived} />
          {WEIGHT_WORDS[finding.weight]}
          {isWaived && <span className="tag">waived</span>}
        </p>
        <h4 id={id} className="finding-says">
          {finding.says}
        </h4>
        {isWaived ? (
          <p className="finding-reason">
            <strong>It stands because:</strong> {finding.waived}
          </p>
        ) : (
          <BandGauge finding={finding} behind={behind} unit={course.unit} />
        )}
        {sweep !== undefined && <p className="finding-sweep">{sweep}</p>}
        <p className="finding-why">{finding.because}</p>
        <Source finding={finding} behind={behind} />
        <Tools finding={finding} done={done} />
      </article>
    </li>
  );
}

function Source({ finding, behind }: { readonly finding: Finding; readonly behind: Behind | undefined }) {
  const limit = behind?.limit;
  return (
    <>
      <p className="finding-source">
        Source: {finding.source}
        {limit !== undefined && (
          <>
            {' '}
            <span className="tag">{limit.house === undefined ? SOURCE_WORDS[limit.grade] : 'house rule'}</span>
          </>
        )}
        {limit?.url !== undefined && (
          <>
            {' '}
            <a className="link" href={limit.url} target="_blank" rel="noreferrer noopener">
              Read it there
            </a>
          </>
        )}
      </p>
      {limit?.note !== undefined && (
        <details className="finding-note">
          <summary>How it is read here</summary>
          <p>{limit.note}</p>
        </details>
      )}
    </>
  );
}

function Fixes({ finding, done }: { readonly finding: Finding; done(): void }) {
  const desk = useDesk();
  const remedies = useRemedies(finding);
  if (remedies === undefined) return <p className="trying">Trying fixes…</p>;
  return remedies.map((remedy) => (
    <button
      key={remedy.says}
      type="button"
      className="button remedy"
      onClick={() => {
        desk.edit(remedy.says, (course) => remedy.apply(course));
        done();
      }}
    >
      <Wrench aria-hidden="true" />
      {remedy.says}
    </button>
  ));
}

function Tools({ finding, done }: { readonly finding: Finding; done(): void }) {
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
    desk.edit(`Waive: ${finding.says}`, (course) => waiveFinding(course, finding.id, reason));
    setAsking(false);
    done();
  };
  return (
    <>
      <div className="finding-tools">
        {!isWaived && <Fixes finding={finding} done={done} />}
        <button type="button" className="button" onClick={show}>
          <LocateFixed aria-hidden="true" />
          Show in the arena
        </button>
        {isWaived ? (
          <button
            type="button"
            className="button"
            onClick={() => {
              desk.edit(`Open again: ${finding.says}`, (course) => unwaiveFinding(course, finding));
              done();
            }}
          >
            <RotateCcw aria-hidden="true" />
            Take the waiver back
          </button>
        ) : (
          !isAsking && (
            <button type="button" className="button" onClick={() => setAsking(true)}>
              <span>
                Waive<span className="visually-hidden"> with a reason</span>…
              </span>
            </button>
          )
        )}
      </div>
      {isAsking && <WaiveForm waive={waive} close={() => setAsking(false)} />}
    </>
  );
}
