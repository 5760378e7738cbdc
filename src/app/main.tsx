import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { createEarlyDesk } from '../desk/early-desk.ts';
import { openLibrary } from '../storage/library.ts';
import { createCourseSaver, type FirstSlot, freshSlot, type LastCourse, lastSaved } from './autosave.ts';
import { CourseSaverContext } from './autosave-context.tsx';
import { ErrorBoundary, NotStarted } from './boundary.tsx';
import { ComparedContext, createCompared } from './change/compared.ts';
import { CHECKS_PART, SWEEPS_PART } from './check/later-checks.ts';
import { DeskProvider } from './desk-context.tsx';
import { courseBlob, saveDownload } from './file/download.ts';
import { FIRST_COURSE } from './file/first-course.ts';
import { INSTRUMENTS_PART } from './later-instruments.ts';
import { laterPart, want } from './later-part.ts';
import { putLinked, readAddress } from './link/linked.ts';
import { PlayerProvider } from './ride/player-context.tsx';
import { Shell } from './shell.tsx';
import './styles/tokens.css';
import './styles/ground.css';
import './styles/shell.css';
import './styles/panels.css';
import './styles/arena.css';
import './styles/tapes.css';
import './styles/hand.css';
import './styles/forced.css';
import { createView, ViewContext } from './view.ts';

const place = document.getElementById('app');
if (place === null) throw new Error('main: index.html has no element with the id "app"');

const LINKS_PART = laterPart(() => import('./link/follow-links.ts'));

function firstSlot(last: LastCourse | undefined): FirstSlot {
  return { slot: last?.slot ?? freshSlot(), isFresh: last === undefined, isSaved: last?.isSaved ?? false };
}

/** A course from a link is kept once it is changed, and not before. */
function lookedAtSlot(): FirstSlot {
  return { slot: freshSlot(), isFresh: true, isSaved: true };
}

async function start(root: HTMLElement): Promise<void> {
  const library = await openLibrary();
  const last = await lastSaved(library);
  const linked = await readAddress();
  const isLinked = linked.kind === 'opened';
  const desk = createEarlyDesk(isLinked ? linked.course : (last?.course ?? FIRST_COURSE));
  if (isLinked) desk.switchStage('ride');
  putLinked(linked);
  const saver = createCourseSaver(desk, library, isLinked ? lookedAtSlot() : firstSlot(last));
  const view = createView(desk.state().course.arena);
  const compared = createCompared();

  createRoot(root).render(
    <StrictMode>
      <ErrorBoundary saved={() => courseBlob(desk.state().course)} save={saveDownload}>
        <DeskProvider desk={desk}>
          <CourseSaverContext value={saver}>
            <ViewContext value={view}>
              <ComparedContext value={compared}>
                <PlayerProvider>
                  <Shell />
                </PlayerProvider>
              </ComparedContext>
            </ViewContext>
          </CourseSaverContext>
        </DeskProvider>
      </ErrorBoundary>
    </StrictMode>,
  );
  CHECKS_PART.subscribe(() => {
    const part = CHECKS_PART.now();
    if (part !== undefined) desk.takeChecker(part.checks);
  });
  INSTRUMENTS_PART.subscribe(() => {
    const part = INSTRUMENTS_PART.now();
    if (part !== undefined) desk.takeInstruments(part.INSTRUMENTS);
  });
  const stop = LINKS_PART.subscribe(() => {
    const part = LINKS_PART.now();
    if (part === undefined) return;
    stop();
    part.followLinks(desk, saver, linked);
  });
  want(INSTRUMENTS_PART);
  want(SWEEPS_PART);
  want(CHECKS_PART);
}

start(place).catch((failure: unknown) => createRoot(place).render(<NotStarted failure={failure} />));
