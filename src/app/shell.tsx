import { ChevronDown, FolderOpen, Redo2, Undo2 } from 'lucide-react';
import { useEffect } from 'react';
import type { Stage } from '../desk/input.ts';
import { appWords } from '../words/app.ts';
import { terms } from '../words/terms.ts';
import { STAGES } from './app-words.ts';
import { ArenaStage } from './arena-stage.tsx';
import { SaveNotice, useSaveState } from './autosave-context.tsx';
import { useBreakpoint } from './breakpoint.ts';
import { countToFix } from './check/visible-findings.ts';
import { useDesk, useDeskState } from './desk-context.tsx';
import { FirstDialogs } from './first/first-dialogs.tsx';
import { useFocusKeeper } from './focus-keeper.ts';
import { HelpButton } from './help/help.tsx';
import { keyPressOf } from './key-press.ts';
import { lazyComponent } from './lazy-panel.tsx';
import { LinkedOrHints } from './link/linked-place.tsx';
import { LiveRegion } from './live-region.tsx';
import { Panels } from './panels.tsx';
import { usePaneKeys } from './panes.ts';
import { ScoreWhereOpen } from './score/score-place.tsx';
import { CompanionWhereOpen } from './setout/companion-place.tsx';
import { SkipLinks } from './skip-links.tsx';
import { panelsOf } from './stages.ts';
import { StripPlace } from './strip/strip-place.tsx';
import { TabList } from './tab-list.tsx';
import { useView } from './view.ts';

// The arena comes first. What waits for the strip and the menu is as large as they are, so that nothing moves.
const RideStrip = lazyComponent(() => import('./strip/strip.tsx').then((module) => module.RideStrip), <StripPlace />);
const FileMenu = lazyComponent(
  () => import('./file/file-menu.tsx').then((module) => module.FileMenu),
  <button type="button" className="quiet worded" disabled>
    <FolderOpen aria-hidden="true" />
    <span>{appWords.file}</span>
    <ChevronDown aria-hidden="true" className="tiny" />
  </button>,
);
const ButtonName = lazyComponent(() => import('./button-name.tsx').then((module) => module.ButtonName), null, 'quiet');
const PagePreview = lazyComponent(
  () => import('./post/page-preview.tsx').then((module) => module.PagePreview),
  <p className="waiting">{appWords.drawingThePage}</p>,
);

/** The whole of the app: stages on top, the stage's panels round the arena or the page, the strip below. */
export function Shell() {
  const stage = useDeskState((state) => state.stage);
  const arrangement = useBreakpoint();
  useHistoryKeys();
  usePaneKeys();
  useFocusKeeper();
  useDoorLeft(stage);
  const panels = panelsOf(stage, arrangement);
  return (
    <div className={`shell shell-${arrangement} at-${stage}`}>
      <SkipLinks arrangement={arrangement} />
      <TopBar stage={stage} />
      <div className="notices">
        <SaveNotice />
        <LinkedOrHints />
      </div>
      <main>
        <div id="stage" role="tabpanel" aria-label={STAGES.find((each) => each.id === stage)?.title}>
          <Panels stage={stage} panels={panels} arrangement={arrangement}>
            {stage === 'post' ? <PagePreview /> : <ArenaStage stage={stage} />}
          </Panels>
        </div>
      </main>
      {stage !== 'post' && arrangement !== 'narrow' && <RideStrip />}
      <LiveRegion />
      <FirstDialogs />
      <CompanionWhereOpen />
      <ScoreWhereOpen />
      <ButtonName />
    </div>
  );
}

function TopBar({ stage }: { readonly stage: Stage }) {
  const desk = useDesk();
  const title = useDeskState((state) => state.course.title);
  const findings = useDeskState(countToFix);
  const { isSaved, isKept } = useSaveState();
  return (
    <header className="top" data-pane="top">
      <div className="brand">
        <img src={new URL('./mark.svg', import.meta.url).href} alt="" width="30" height="30" />
        <div className="brand-words">
          <h1>Polewright</h1>
          <p className="course-line">
            <span className="course-title" title={title}>
              {title === '' ? terms.untitledCourse : title}
            </span>
            <span className="save-state">{!isKept ? appWords.fromLink : isSaved ? terms.saved : terms.saving}</span>
          </p>
        </div>
      </div>
      <TabList
        label={appWords.stages}
        className="stage-tabs"
        chosen={stage}
        choose={(id) => desk.switchStage(id as Stage)}
        tabs={STAGES.map(({ id, title: name, does }) => ({
          id,
          title: name,
          controls: 'stage',
          hint: does,
          ...(id === 'check' && findings > 0 ? { badge: String(findings) } : {}),
        }))}
      />
      <div className="top-tools">
        <UndoButtons />
        <FileMenu />
        <HelpButton />
      </div>
    </header>
  );
}

function UndoButtons() {
  const desk = useDesk();
  const { steps, present } = useDeskState((state) => state.history);
  const undoes = present > 0 ? steps[present]?.label : undefined;
  const redoes = steps[present + 1]?.label;
  return (
    <>
      <button
        type="button"
        className="quiet"
        disabled={undoes === undefined}
        onClick={() => desk.undo()}
        aria-label={undoes === undefined ? terms.undo : appWords.undoStep(undoes)}
        title={undoes === undefined ? appWords.nothingToUndo : appWords.undoStep(undoes)}
      >
        <Undo2 aria-hidden="true" />
      </button>
      <button
        type="button"
        className="quiet"
        disabled={redoes === undefined}
        onClick={() => desk.redo()}
        aria-label={redoes === undefined ? terms.redo : appWords.redoStep(redoes)}
        title={redoes === undefined ? appWords.nothingToRedo : appWords.redoStep(redoes)}
      >
        <Redo2 aria-hidden="true" />
      </button>
    </>
  );
}

/** The way back from Check to where a badge was pressed is open only while somebody is at Check. */
function useDoorLeft(stage: Stage): void {
  const view = useView();
  useEffect(() => {
    if (stage !== 'check') view.comeFrom(null);
  }, [view, stage]);
}

/** Undo and redo by keys from anywhere, save in a field that takes text: there they are the field's own. */
function useHistoryKeys(): void {
  const desk = useDesk();
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      const stroke = keyPressOf(event);
      if (!stroke.mod || !['z', 'y'].includes(stroke.key.toLowerCase()) || takesText(event.target)) return;
      if (desk.press(stroke)) event.preventDefault();
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, [desk]);
}

function takesText(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches('input, textarea, select, [contenteditable], dialog *');
}
