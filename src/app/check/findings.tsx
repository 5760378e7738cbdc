import { Undo2 } from 'lucide-react';
import { type KeyboardEvent, useRef } from 'react';
import type { Finding, Weight } from '../../core/checks/check.ts';
import { unwaivedFindings } from '../../core/checks/results/waived.ts';
import { findingsWords } from '../../words/findings.ts';
import { STAGES, WEIGHT_WORDS } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { keyPressOf } from '../key-press.ts';
import { focusArena } from '../panes.ts';
import { useView, useViewState } from '../view.ts';
import { FindingCard } from './finding-card.tsx';
import { findingKey } from './finding-doors.ts';
import { FixAll } from './fix-all.tsx';
import { type FindingGroup, type Grouping, groupsOf, listedIds } from './groups.ts';
import { Sweeps } from './sweeps.tsx';
import { visibleFindings } from './visible-findings.ts';
import { WeightSign } from './weight-sign.tsx';

const WEIGHTS: readonly Weight[] = ['must', 'should', 'note'];

/** What the checks have to say, with what can be done about it. */
export function FindingsPanel() {
  const desk = useDesk();
  const view = useView();
  const findings = useDeskState(visibleFindings);
  const isChecked = useDeskState((state) => state.isChecked);
  const survey = useDeskState((state) => state.survey);
  const grouping = useViewState((state) => state.grouping);
  const wanted = useViewState((state) => state.openFinding);
  const summary = useRef<HTMLParagraphElement>(null);
  if (survey.obstacles.length === 0) return <p className="empty">{findingsWords.nothingToCheck}</p>;
  if (!isChecked) return <p className="empty">{findingsWords.checking}</p>;

  const groups = groupsOf(findings, survey, grouping);
  const order = listedIds(groups);
  const open = wanted === undefined ? order[0] : (wanted ?? undefined);
  const toSummary = () => summary.current?.focus({ preventScroll: true });
  // A finding that was dealt with is gone or has moved to the end: the next one opens, so that the work goes on by itself.
  const done = (id: string) => {
    const now = desk.state();
    const left = listedIds(groupsOf(visibleFindings(now), now.survey, grouping));
    const isHere =
      left.includes(id) && visibleFindings(now).some((each) => each.id === id && each.waived === undefined);
    const next = isHere ? id : (order.slice(order.indexOf(id) + 1).find((each) => left.includes(each)) ?? left[0]);
    view.openFinding(next ?? null, 'seek');
    if (next === undefined) toSummary();
  };
  const pressed = (event: KeyboardEvent) => {
    const isText = event.target instanceof HTMLElement && event.target.matches('input, textarea, select');
    if (isText || event.defaultPrevented) return;
    if (event.key === 'Escape') focusArena();
    else if (!findingKey({ desk, view }, keyPressOf(event), 'list')) return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys go through the list from every control in it.
    <div className="findings" onKeyDown={pressed}>
      <BackButton />
      <p ref={summary} className="findings-summary" tabIndex={-1}>
        <Summary findings={findings} />
      </p>
      {findings.length > 0 && <GroupChoice />}
      <FixAll done={toSummary} />
      {groups.map((group) => (
        <GroupSection key={`${grouping}:${group.id}`} group={group} open={open} done={done} />
      ))}
      <Sweeps />
      <p className="caution">{findingsWords.judge}</p>
    </div>
  );
}

/** The way back to where a badge was pressed. */
function BackButton() {
  const desk = useDesk();
  const from = useViewState((state) => state.cameFrom);
  const stage = STAGES.find(({ id }) => id === from);
  if (stage === undefined) return null;
  const back = () => {
    desk.switchStage(stage.id);
    focusArena();
  };
  return (
    <button type="button" className="button findings-back" onClick={back}>
      <Undo2 aria-hidden="true" />
      {findingsWords.back(stage.title)}
    </button>
  );
}

function Summary({ findings }: { readonly findings: readonly Finding[] }) {
  const open = unwaivedFindings(findings);
  const waived = findings.length - open.length;
  const isMet = waived === 0 && open.every(({ weight }) => weight === 'note');
  return (
    <>
      {isMet && <span className="empty is-good">{findingsWords.allMet}</span>}
      {WEIGHTS.map((weight) => {
        const count = open.filter((finding) => finding.weight === weight).length;
        return count === 0 ? null : (
          <span key={weight} className="count">
            <WeightSign weight={weight} /> {findingsWords.weighed(WEIGHT_WORDS[weight], count)}
          </span>
        );
      })}
      {open.length === 0 && !isMet && <span className="count">{findingsWords.noneOpen}</span>}
      {waived > 0 && <span className="count">{findingsWords.waived(waived)}</span>}
    </>
  );
}

function GroupChoice() {
  const view = useView();
  const grouping = useViewState((state) => state.grouping);
  return (
    <fieldset className="segments">
      <legend className="visually-hidden">{findingsWords.grouping}</legend>
      {Object.entries(findingsWords.groupings).map(([id, title]) => (
        <button key={id} type="button" aria-pressed={grouping === id} onClick={() => view.group(id as Grouping)}>
          {title}
        </button>
      ))}
    </fieldset>
  );
}

function GroupSection({
  group,
  open,
  done,
}: {
  readonly group: FindingGroup;
  readonly open: string | undefined;
  done(id: string): void;
}) {
  const id = `findings-${group.id}`;
  return (
    <section aria-labelledby={id} data-group={group.id}>
      <h3 id={id} className="group-title">
        {group.number !== undefined && <span className="number">{group.number}</span>}
        <span>{findingsWords.group(group.title, group.findings.length)}</span>
      </h3>
      <ul>
        {group.cards.map((bundle) => (
          <FindingCard key={bundle[0].id} bundle={bundle} open={open} done={done} />
        ))}
      </ul>
    </section>
  );
}
