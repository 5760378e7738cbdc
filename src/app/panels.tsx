import { ChevronDown, ChevronRight, PanelRightClose, PanelRightOpen } from 'lucide-react';
import { type ComponentType, type ReactNode, useEffect, useState } from 'react';
import type { Stage } from '../desk/input.ts';
import { appWords } from '../words/app.ts';
import { byEarWords } from '../words/by-ear.ts';
import { shellWords } from '../words/shell.ts';
import type { Breakpoint } from './breakpoint.ts';
import { useDeskState } from './desk-context.tsx';
import { fetchLaterParts } from './later-part.ts';
import { useRememberedSwitch } from './remembered.ts';
import { TabList } from './tab-list.tsx';
import { useViewState } from './view.ts';

/** A panel of a stage. On small screens the panels of a stage are the tabs of one. */
export interface Panel {
  readonly id: string;
  readonly title: string;
  /** The title where it is a tab beside others. */
  readonly short?: string;
  readonly side: 'left' | 'right';
  readonly body: ComponentType;
  /** Where there are two sides, panels that follow each other with this share one place as tabs. */
  readonly isTab?: true;
  /** Takes the height that the others leave. */
  readonly grows?: true;
  /** Nothing in it can be pressed: it takes the focus itself, so that keys can scroll it. */
  readonly isRead?: true;
  /** As a tab it opens when an obstacle is chosen. */
  readonly opensOnChoice?: true;
  /** As a tab it stays when an obstacle is chosen, which it shows itself. */
  readonly staysOnChoice?: true;
}

/** The panels round the middle, as the arrangement wants them. The middle stays when they are others. */
export function Panels({
  stage,
  panels,
  arrangement,
  children,
}: {
  readonly stage: Stage;
  readonly panels: readonly Panel[];
  readonly arrangement: Breakpoint;
  readonly children: ReactNode;
}) {
  useEffect(fetchLaterParts, []);
  const isWide = arrangement === 'wide';
  return (
    <div className={`bench bench-${arrangement}`}>
      {isWide && <Side key={stage} panels={panels} side="left" />}
      <div className="middle">{children}</div>
      {isWide ? (
        <Side key={`${stage}-right`} panels={panels} side="right" />
      ) : (
        <TabbedPanels key={stage} panels={panels} arrangement={arrangement} />
      )}
    </div>
  );
}

function Side({ panels, side }: { readonly panels: readonly Panel[]; readonly side: Panel['side'] }) {
  const own = panels.filter((panel) => panel.side === side);
  const tabs = own.filter(({ isTab }) => isTab);
  return (
    <aside className={`side side-${side}`} aria-label={byEarWords.panes[side]} data-pane={side}>
      {tabs.length > 0 && <SideTabs panels={tabs} side={side} />}
      {own
        .filter(({ isTab }) => !isTab)
        .map((panel) => (
          <FoldingPanel key={panel.id} {...panel} />
        ))}
    </aside>
  );
}

/** A panel under its heading, which folds it and leaves the room to the other panels of the side. */
function FoldingPanel({ id, title, body: Body, grows, isRead }: Panel) {
  const [isOpen, setOpen] = useRememberedSwitch(`panel-${id}`, true);
  const Sign = isOpen ? ChevronDown : ChevronRight;
  return (
    <section
      className={grows && isOpen ? 'panel grows' : 'panel'}
      aria-labelledby={`panel-${id}`}
      tabIndex={isRead ? 0 : undefined}
    >
      <h2 id={`panel-${id}`}>
        <button type="button" className="panel-fold" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {title}
          <Sign aria-hidden="true" />
        </button>
      </h2>
      {isOpen && <Body />}
    </section>
  );
}

/** Panels of one side of which one is shown. */
function SideTabs({ panels, side }: { readonly panels: readonly Panel[]; readonly side: Panel['side'] }) {
  const [wanted, setWanted] = useState('');
  const shown = panels.find(({ id }) => id === wanted) ?? panels[0];
  if (shown === undefined) return null;
  const Body = shown.body;
  return (
    <>
      <div className="tabbed-head">
        <TabList
          label={side === 'left' ? appWords.leftPanels : appWords.rightPanels}
          className="panel-tabs"
          tabs={panels.map(({ id, title }) => ({ id, title, controls: `side-${side}` }))}
          chosen={shown.id}
          choose={setWanted}
        />
      </div>
      <section id={`side-${side}`} className="panel grows" role="tabpanel" aria-label={shown.title}>
        <h2 className="visually-hidden">{shown.title}</h2>
        <Body />
      </section>
    </>
  );
}

function TabbedPanels({
  panels,
  arrangement,
}: {
  readonly panels: readonly Panel[];
  readonly arrangement: Breakpoint;
}) {
  const [wanted, setWanted] = useState('');
  const [isOpen, setOpen] = useRememberedSwitch('panel', true);
  const shown = panels.find((panel) => panel.id === wanted) ?? panels[0];
  const chosen = useDeskState((state) => state.chosen[0]);
  const [seen, setSeen] = useState(chosen);
  if (chosen !== seen) {
    setSeen(chosen);
    const opened = panels.find((panel) => panel.opensOnChoice);
    if (chosen !== undefined && opened !== undefined && !shown?.staysOnChoice) setWanted(opened.id);
  }
  const sought = useViewState((state) => state.soughtFinding);
  const [lastSought, setLastSought] = useState<string | null>(null);
  if (sought !== lastSought) {
    setLastSought(sought);
    // A badge was pressed: what it opens must be there to be seen.
    if (sought !== null && panels.some(({ id }) => id === 'findings')) {
      setWanted('findings');
      setOpen(true);
    }
  }
  if (shown === undefined) return null;
  const Body = shown.body;
  const Icon = isOpen ? PanelRightClose : PanelRightOpen;
  const choose = (id: string) => {
    setWanted(id);
    setOpen(true);
  };
  return (
    <aside className={isOpen ? 'tabbed' : 'tabbed is-shut'} aria-label={byEarWords.panes.panel} data-pane="panel">
      <div className="tabbed-head">
        {(isOpen || arrangement === 'narrow') && (
          <TabList
            label={appWords.panels}
            className="panel-tabs"
            tabs={panels.map(({ id, title, short }) => ({ id, title: short ?? title, controls: 'panel-shown' }))}
            chosen={shown.id}
            choose={choose}
          />
        )}
        <button
          type="button"
          className="quiet"
          aria-expanded={isOpen}
          aria-label={isOpen ? shellWords.hidePanel : shellWords.showPanel}
          onClick={() => setOpen(!isOpen)}
        >
          <Icon aria-hidden="true" className={arrangement === 'narrow' ? 'quarter' : ''} />
        </button>
      </div>
      {isOpen && (
        <section
          id="panel-shown"
          className="panel grows"
          role="tabpanel"
          aria-label={shown.title}
          tabIndex={shown.isRead ? 0 : undefined}
        >
          <h2 className="visually-hidden">{shown.title}</h2>
          <Body />
        </section>
      )}
    </aside>
  );
}
