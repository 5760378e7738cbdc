import { ChevronDown, ChevronUp } from 'lucide-react';
import { useId, useLayoutEffect, useRef } from 'react';
import type { Finding } from '../../core/checks/check.ts';
import { limitsOf } from '../../core/checks/rulebooks/rulebooks.ts';
import { findingsWords } from '../../words/findings.ts';
import { WEIGHT_WORDS } from '../app-words.ts';
import { useDeskState, useRestingSurvey } from '../desk-context.tsx';
import { scrollPanelTo } from '../panes.ts';
import { useView, useViewState } from '../view.ts';
import { BandGauge } from './band-gauge.tsx';
import { FindingTools } from './finding-tools.tsx';
import type { FindingBundle } from './groups.ts';
import { type Behind, limitBehind, SOURCE_WORDS } from './limit-behind.ts';
import { sweepFor } from './sweep-words.ts';
import { WeightSign } from './weight-sign.tsx';

interface CardProps {
  /** Findings that are alike. */
  readonly bundle: FindingBundle;
  /** Id of the finding whose card is open. */
  readonly open: string | undefined;
  /** Called when something was done about a finding. */
  done(id: string): void;
}

/** What a finding says, as a door to the rest of it: why it matters, its source, its fixes. Findings that are alike share one. */
export function FindingCard({ bundle, open, done }: CardProps) {
  const view = useView();
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const [finding, ...others] = bundle;
  const isPointed = useViewState(
    ({ pointed }) => pointed?.kind === 'finding' && bundle.some((each) => each.id === pointed.id),
  );
  const isSought = useViewState(({ soughtFinding }) => bundle.some((each) => each.id === soughtFinding));
  const isOpen = bundle.some((each) => each.id === open);
  const isWaived = finding.waived !== undefined;
  useLayoutEffect(() => {
    if (!isSought) return;
    // The heading of its group comes into view first, and with it the others of the obstacle.
    const door = button.current;
    const [section, card] = [door?.closest('section'), door?.closest('li')];
    if (section != null) scrollPanelTo(section, 'top');
    door?.focus({ preventScroll: true });
    if (card != null) scrollPanelTo(card);
    view.foundFinding();
  }, [isSought, view]);
  const Chevron = isOpen ? ChevronUp : ChevronDown;
  return (
    <li
      className={`finding ${finding.weight} ${isPointed ? 'is-pointed' : ''} ${isWaived ? 'is-waived' : ''}`}
      data-finding={finding.check}
      data-count={bundle.length}
      onPointerEnter={() => view.point({ kind: 'finding', id: finding.id })}
      onPointerLeave={() => view.point(null)}
      onFocus={() => view.point({ kind: 'finding', id: finding.id })}
    >
      <article aria-labelledby={id}>
        <h4 className="finding-says">
          <button
            ref={button}
            type="button"
            className="finding-door"
            aria-expanded={isOpen}
            aria-describedby={`${id}-weight`}
            onClick={() => view.openFinding(isOpen ? null : finding.id)}
          >
            <WeightSign weight={finding.weight} hollow={isWaived} />
            <span id={id}>{finding.says}</span>
            <Chevron aria-hidden="true" className="tiny" />
          </button>
        </h4>
        <p
          id={`${id}-weight`}
          className={isOpen || isWaived || others.length > 0 ? 'finding-weight' : 'visually-hidden'}
        >
          {WEIGHT_WORDS[finding.weight]}
          {others.length > 0 && <span className="tag">{findingsWords.more(others.length)}</span>}
          {isWaived && <span className="tag">{findingsWords.waivedTag}</span>}
        </p>
        {isOpen && <Opened bundle={bundle} done={done} />}
      </article>
    </li>
  );
}

/** What is the same for all of a card, and each of its findings with its own fixes. */
function Opened({ bundle, done }: Omit<CardProps, 'open'>) {
  const [finding, ...others] = bundle;
  const course = useDeskState((state) => state.course);
  const behind = limitBehind(finding, limitsOf(course));
  return (
    <>
      <Measured finding={finding} behind={behind} />
      <FindingTools finding={finding} done={done} />
      {others.length > 0 && (
        <ul className="finding-members">
          {others.map((each) => (
            <Member key={each.id} finding={each} behind={behind} done={done} />
          ))}
        </ul>
      )}
      <p className="finding-why">{finding.because}</p>
      <Source finding={finding} behind={behind} />
    </>
  );
}

function Member({
  finding,
  behind,
  done,
}: {
  readonly finding: Finding;
  readonly behind: Behind | undefined;
  done(id: string): void;
}) {
  return (
    <li>
      <h5 className="finding-says">{finding.says}</h5>
      <Measured finding={finding} behind={behind} />
      <FindingTools finding={finding} done={done} />
    </li>
  );
}

/** What was measured against what is allowed; of one that is waived, why it stands. */
function Measured({ finding, behind }: { readonly finding: Finding; readonly behind: Behind | undefined }) {
  const unit = useDeskState((state) => state.course.unit);
  const sweep = sweepFor(finding, useRestingSurvey());
  return (
    <>
      {finding.waived === undefined ? (
        <BandGauge finding={finding} behind={behind} unit={unit} />
      ) : (
        <p className="finding-reason">
          <strong>{findingsWords.standsBecause}</strong> {finding.waived}
        </p>
      )}
      {sweep !== undefined && <p className="finding-sweep">{sweep}</p>}
    </>
  );
}

function Source({ finding, behind }: { readonly finding: Finding; readonly behind: Behind | undefined }) {
  const limit = behind?.limit;
  return (
    <>
      <p className="finding-source">
        {findingsWords.source(finding.source)}
        {limit !== undefined && (
          <>
            {' '}
            <span className="tag">
              {limit.house === undefined ? SOURCE_WORDS[limit.grade] : findingsWords.houseRule}
            </span>
          </>
        )}
        {limit?.url !== undefined && (
          <>
            {' '}
            <a className="link" href={limit.url} target="_blank" rel="noreferrer noopener">
              {findingsWords.readThere}
            </a>
          </>
        )}
      </p>
      {limit?.note !== undefined && (
        <details className="finding-note">
          <summary>{findingsWords.howRead}</summary>
          <p>{limit.note}</p>
        </details>
      )}
    </>
  );
}
