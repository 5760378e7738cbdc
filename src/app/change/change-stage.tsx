import { type RefObject, useEffect, useRef, useState } from 'react';
import { currentLayout, type Layout } from '../../core/course/course.ts';
import { presentCourse } from '../../core/course/history.ts';
import { changeWords } from '../../words/change.ts';
import { ArenaView } from '../arena/arena-view.tsx';
import type { ScreenSize } from '../arena/camera.ts';
import { useBreakpoint } from '../breakpoint.ts';
import { useDeskState } from '../desk-context.tsx';
import { TabList } from '../tab-list.tsx';
import { comparedLayouts, useComparedState } from './compared.ts';
import { drawingsStand } from './drawings-stand.ts';
import { OtherDrawing } from './other-drawing.tsx';

/** The arena at Change: alone, or with the compared layouts beside it, moved and zoomed together. */
export function ChangeStage() {
  const state = useComparedState((compared) => compared);
  // The same object while something is dragged: a pointer move must not render the arena anew.
  const course = useDeskState((desk) => presentCourse(desk.history));
  const shown = currentLayout(course);
  const isNarrow = useBreakpoint() === 'narrow';
  const place = useRef<HTMLDivElement>(null);
  const size = useSize(place);
  const others = state.mode === 'side-by-side' ? comparedLayouts(course, state) : [];
  const stand = drawingsStand(course.arena, size, others.length + 1);
  return (
    <div ref={place} className="drawings-place">
      {isNarrow && others.length > 0 ? (
        <OneOfDrawings shown={shown} others={others} />
      ) : (
        <div className={others.length === 0 ? 'drawings' : `drawings are-${stand}`}>
          <section className="drawing" aria-label={shown.title}>
            {others.length > 0 && <p className="drawing-title is-shown">{shown.title}</p>}
            <div className="drawing-ground">
              <ArenaView />
            </div>
          </section>
          {others.map((layout) => (
            <section key={layout.id} className="drawing" aria-label={layout.title}>
              <p className="drawing-title">{layout.title}</p>
              <div className="drawing-ground">
                <OtherDrawing layout={layout.id} />
              </div>
            </section>
          ))}
        </div>
      )}
    </div>
  );
}

/** On a phone there is room for one of the drawings: which, is chosen above it. */
function OneOfDrawings({ shown, others }: { readonly shown: Layout; readonly others: readonly Layout[] }) {
  const [wanted, setWanted] = useState('');
  const other = others.find(({ id }) => id === wanted);
  return (
    <div className="drawings are-in-turn">
      <TabList
        label={changeWords.layoutsArena}
        className="panel-tabs"
        tabs={[shown, ...others].map(({ id, title }) => ({ id, title, controls: 'drawing-shown' }))}
        chosen={other?.id ?? shown.id}
        choose={setWanted}
      />
      <div id="drawing-shown" className="drawing-ground" role="tabpanel" aria-label={(other ?? shown).title}>
        <ArenaView />
        {other !== undefined && <OtherDrawing layout={other.id} />}
      </div>
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
