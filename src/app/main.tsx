import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { createDesk } from '../desk/editor.ts';
import { openLibrary } from '../storage/library.ts';
import { createKeeper, freshSlot, lastKept } from './autosave.ts';
import { KeeperContext } from './autosave-context.tsx';
import { Boundary } from './boundary.tsx';
import { DeskProvider } from './desk-context.tsx';
import { saveDownload } from './file/download.ts';
import { courseBlob } from './file/files.ts';
import { firstCourse } from './file/starters.ts';
import { PlayerProvider } from './ride/player-context.tsx';
import { Shell } from './shell.tsx';
import './styles/ground.css';
import './styles/shell.css';
import './styles/panels.css';
import './styles/check.css';
import './styles/arena.css';
import './styles/tapes.css';
import './styles/strip.css';
import './styles/ride.css';
import './styles/post.css';
import { createView, ViewContext } from './view.ts';

const place = document.getElementById('app');
if (place === null) throw new Error('main: index.html has no element with the id "app"');

const library = await openLibrary();
const last = await lastKept(library);
const desk = createDesk(last?.course ?? (await firstCourse()));
const keeper = createKeeper(desk, library, { slot: last?.slot ?? freshSlot(), isFresh: last === undefined });
const view = createView(desk.state().course.arena);

createRoot(place).render(
  <StrictMode>
    <Boundary saved={() => courseBlob(desk.state().course)} save={saveDownload}>
      <DeskProvider desk={desk}>
        <KeeperContext value={keeper}>
          <ViewContext value={view}>
            <PlayerProvider>
              <Shell />
            </PlayerProvider>
          </ViewContext>
        </KeeperContext>
      </DeskProvider>
    </Boundary>
  </StrictMode>,
);
