import { LocateFixed, Wrench } from 'lucide-react';
import type { Finding, Weight } from '../../core/checks/check.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { useView, useViewState } from '../view.ts';
import { WEIGHT_WORDS } from '../words.ts';

const WEIGHTS: readonly Weight[] = ['must', 'should', 'note'];

/** What the checks have to say, the heaviest first. */
export function FindingsPanel() {
  const findings = useDeskState((state) => state.findings);
  const obstacles = useDeskState((state) => state.survey.obstacles.length);
  if (findings.length === 0) {
    return obstacles === 0 ? (
      <p className="empty">There is nothing to check yet. Set the first obstacle.</p>
    ) : (
      <p className="empty is-good">
        Nothing to mend: every check that the rule book gives a limit for is met. Walk it once with the tape all the
        same.
      </p>
    );
  }
  return (
    <div className="findings">
      {WEIGHTS.map((weight) => {
        const own = findings.filter((finding) => finding.weight === weight);
        if (own.length === 0) return null;
        return (
          <section key={weight} aria-labelledby={`weight-${weight}`}>
            <h3 id={`weight-${weight}`} className={`weight ${weight}`}>
              <WeightSign weight={weight} /> {WEIGHT_WORDS[weight]} ({own.length})
            </h3>
            <ul>
              {own.map((finding) => (
                <FindingCard key={finding.id} finding={finding} />
              ))}
            </ul>
          </section>
        );
      })}
    </div>
  );
}

function FindingCard({ finding }: { readonly finding: Finding }) {
  const desk = useDesk();
  const view = useView();
  const isPointed = useViewState(({ pointed }) => pointed?.kind === 'finding' && pointed.id === finding.id);
  const go = () => {
    view.show(finding.at);
    view.point({ kind: 'finding', id: finding.id });
    desk.choose(finding.keys.slice(0, 1));
  };
  return (
    <li
      className={`finding ${finding.weight} ${isPointed ? 'is-pointed' : ''}`}
      data-finding={finding.check}
      onPointerEnter={() => view.point({ kind: 'finding', id: finding.id })}
      onPointerLeave={() => view.point(null)}
    >
      <p className="finding-says">{finding.says}</p>
      <p className="finding-why">{finding.because}</p>
      <div className="finding-tools">
        {finding.remedies.map((remedy) => (
          <button
            key={remedy.says}
            type="button"
            className="button remedy"
            onClick={() => desk.edit(remedy.says, (course) => remedy.apply(course))}
          >
            <Wrench aria-hidden="true" />
            {remedy.says}
          </button>
        ))}
        <button type="button" className="button" onClick={go}>
          <LocateFixed aria-hidden="true" />
          Go there
        </button>
      </div>
      <p className="finding-source">Source: {finding.source}</p>
    </li>
  );
}

/** The same sign as in the arena: octagon, triangle, disc. */
export function WeightSign({ weight }: { readonly weight: Weight }) {
  const outline = {
    must: 'M6.6 1h6.8L19 6.6v6.8L13.4 19H6.6L1 13.4V6.6z',
    should: 'M10 1 19.5 18H.5z',
    note: 'M10 1a9 9 0 1 0 0 18 9 9 0 0 0 0-18z',
  }[weight];
  return (
    <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true" className={`weight-sign ${weight}`}>
      <path d={outline} />
      <text x="10" y={weight === 'should' ? 16 : 14.5} textAnchor="middle">
        {weight === 'note' ? 'i' : '!'}
      </text>
    </svg>
  );
}
