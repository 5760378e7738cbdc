import { type RefObject, useEffect, useRef, useState } from 'react';
import { currentLayout } from '../core/course/course.ts';
import { presentCourse } from '../core/course/history.ts';
import type { Stage } from '../desk/input.ts';
import { arenaWords } from '../words/arena.ts';
import { ArenaView } from './arena/arena-view.tsx';
import type { ScreenSize } from './arena/camera.ts';
import { useBreakpoint } from './breakpoint.ts';
import { comparedLayouts, useComparedState } from './change/compared.ts';
import { drawingsStand } from './change/drawings-stand.ts';
import { useDeskState } from './desk-context.tsx';
import { lazyComponent } from './lazy-panel.tsx';
import { TabList } from './tab-list.tsx';

const PlayBar = lazyComponent(
  () => import('./ride/play-bar.tsx').then((module) => module.PlayBar),
  <div className="play-bar is-waiting" aria-hidden="true" />,
);
const OtherDrawing = lazyComponent(() => import('./change/other-drawing.tsx').then((module) => module.OtherDrawing));

/**
 * The arena in the middle of the page: at Ride with what plays the go below it, at Change with the compared layouts beside
 * it, moved and zoomed together. It is one arena at all stages and in all arrangements: when they change, it keeps its
 * drawing, the focus, and the pointer that presses on it.
 */
export function ArenaStage({ stage }: { readonly stage: Stage }) {
  const compared = useComparedState((state) => state);
  // The same object while something is dragged: a pointer move must not render the arena anew.
  const course = useDeskState((desk) => presentCourse(desk.history));
  const shown = currentLayout(course);
  const isNarrow = useBreakpoint() === 'narrow';
  const place = useRef<HTMLDivElement>(null);
  const size = useSize(place);
  const [wanted, setWanted] = useState('');
  const isBeside = stage === 'change' && compared.mode === 'side-by-side';
  const others = isBeside ? comparedLayouts(course, compared) : [];
  // On a phone there is room for one of the drawings: which, is chosen above it.
  const isInTurn = isNarrow && others.length > 0;
  const over = isInTurn ? others.find(({ id }) => id === wanted) : undefined;
  const stand = isInTurn ? 'in-turn' : drawingsStand(course.arena, size, others.length + 1);
  const label = (over ?? shown).title;
  return (
    <div className="arena-stage">
      <div ref={place} className="drawings-place">
        <div className={others.length === 0 ? 'drawings' : `drawings are-${stand}`}>
          {isInTurn && (
            <TabList
              label={arenaWords.layoutsArena}
              className="panel-tabs"
              tabs={[shown, ...others].map(({ id, title }) => ({ id, title, controls: 'drawing-shown' }))}
              chosen={over?.id ?? shown.id}
              choose={setWanted}
            />
          )}
          <section
            className="drawing"
            {...(isInTurn ? { id: 'drawing-shown', role: 'tabpanel' } : {})}
            aria-label={others.length > 0 ? label : undefined}
          >
            {others.length > 0 && !isInTurn && <p className="drawing-title is-shown">{shown.title}</p>}
            <div className="drawing-ground">
              <ArenaView />
              {over !== undefined && <OtherDrawing layout={over.id} />}
            </div>
          </section>
          {!isInTurn &&
            others.map((layout) => (
              <section key={layout.id} className="drawing" aria-label={layout.title}>
                <p className="drawing-title">{layout.title}</p>
                <div className="drawing-ground">
                  <OtherDrawing layout={layout.id} />
                </div>
              </section>
            ))}
        </div>
      </div>
      {stage === 'ride' && <PlayBar />}
    </div>
  );
}

function useSize(place: RefObject<HTMLElement | null>): ScreenSize {
  const [size, setSize] = useState<ScreenSize>({ width: 0, height: 0 });
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const watcher = new ResizeObserver(() => setSize({ width: element.clientWidth, height: element.clientHeight }));
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [place]);
  return size;
}
