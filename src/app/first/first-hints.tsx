import '../styles/first.css';
import { X } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import { newCourseWords, hintWords as words } from '../../words/first-visit.ts';
import { screenOf } from '../arena/camera.ts';
import { useCourseSaver } from '../autosave-context.tsx';
import { useBreakpoint } from '../breakpoint.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { useView } from '../view.ts';
import { openDoor } from './doors.ts';
import { exampleDrag } from './example-drag.ts';
import { passFirstVisit, useFirstVisit } from './visit.ts';

/** The page is left alone for so long before the example moves by itself. Milliseconds. */
const BEFORE_EXAMPLE = 2500;
/** Of the example's mark on what lies there, pixels. */
const PICK = 8;
/** What makes a page somebody's own. */
const INPUTS = ['pointerdown', 'keydown', 'wheel'] as const;

/** One quiet hint at a time on a first visit, above the arena and over nothing. One that is put away does not come back. */
export function FirstHints() {
  const visit = useFirstVisit();
  const saver = useCourseSaver();
  useEffect(() => {
    if (visit !== null) return;
    // Whoever has drawn something here before hints were kept needs none.
    void saver.courses().then((courses) => {
      const isKnown = courses.some(({ slot }) => slot !== saver.slot());
      passFirstVisit(isKnown ? { hints: words.hints.length, example: true } : {});
    });
  }, [visit, saver]);
  const hint = visit === null ? undefined : words.hints[visit.hints];
  return visit === null || hint === undefined ? null : (
    <Hint place={visit.hints} isDue={!visit.example} says={hint.says} verb={hint.verb} />
  );
}

function Hint({
  place,
  isDue,
  says,
  verb,
}: {
  readonly place: number;
  readonly isDue: boolean;
  readonly says: string;
  readonly verb: 'show' | 'new-course' | 'none';
}) {
  const [isPlaying, setPlaying] = useState(false);
  const canShow = useDeskState((state) => state.stage === 'set' && state.survey.line.gaps.length > 0);
  // Where panels are tabs, what is chosen opens its tab: that would not be as it was, so the example waits to be asked.
  const isWide = useBreakpoint() === 'wide';
  useExampleWhenIdle(isDue && canShow && isWide && verb === 'show', () => setPlaying(true));
  const isLast = place === words.hints.length - 1;
  const pass = (hints: number) => passFirstVisit({ hints, example: true });
  return (
    <section className="first-hint" aria-label={words.label}>
      <p>
        <span className="first-hint-place">{words.place(place + 1, words.hints.length)}</span>
        {isPlaying ? words.playing : says}
      </p>
      <div className="first-hint-verbs">
        {verb === 'show' && canShow && (
          <button type="button" className="button" onClick={() => setPlaying(true)}>
            {words.show}
          </button>
        )}
        {verb === 'new-course' && (
          <button type="button" className="button" aria-haspopup="dialog" onClick={() => openDoor('new-course')}>
            {newCourseWords.open}
          </button>
        )}
        <button type="button" className="button" onClick={() => pass(place + 1)}>
          {isLast ? words.done : words.next}
        </button>
        {!isLast && (
          <button
            type="button"
            className="quiet"
            aria-label={words.noMore}
            title={words.noMore}
            onClick={() => pass(words.hints.length)}
          >
            <X aria-hidden="true" />
          </button>
        )}
      </div>
      {isPlaying && <ExampleMark over={() => setPlaying(false)} />}
    </section>
  );
}

/** Plays the example once, when nobody does anything, on a page that is looked at, for those who do not mind motion. */
function useExampleWhenIdle(isDue: boolean, play: () => void): void {
  const now = useRef(play);
  useEffect(() => {
    now.current = play;
  });
  useEffect(() => {
    if (!isDue || window.matchMedia('(prefers-reduced-motion: reduce)').matches) return;
    const done = () => passFirstVisit({ example: true });
    const timer = setTimeout(() => {
      if (document.visibilityState !== 'visible') return;
      done();
      now.current();
    }, BEFORE_EXAMPLE);
    const input = () => {
      clearTimeout(timer);
      done();
    };
    for (const name of INPUTS) window.addEventListener(name, input, { capture: true, once: true });
    return () => {
      clearTimeout(timer);
      for (const name of INPUTS) window.removeEventListener(name, input, { capture: true });
    };
  }, [isDue]);
}

/** The mark that drags, over the arena; any input ends it and comes to a page that is as it was. */
function ExampleMark({ over }: { over(): void }) {
  const desk = useDesk();
  const view = useView();
  const mark = useRef<SVGSVGElement>(null);
  const end = useRef(over);
  useEffect(() => {
    end.current = over;
  });
  useEffect(() => {
    const drag = exampleDrag(desk, PICK / view.state().camera.scale);
    const ground = document.querySelector('.arena-ground');
    if (drag === undefined || ground === null) {
      end.current();
      return;
    }
    let frame = 0;
    let began: number | undefined;
    const paint = (now: number) => {
      began ??= now;
      const at = drag.at(now - began);
      if (at === null) {
        end.current();
        return;
      }
      const box = ground.getBoundingClientRect();
      const { x, y } = screenOf(view.state().camera, at);
      if (mark.current !== null) mark.current.style.transform = `translate(${box.left + x}px, ${box.top + y}px)`;
      frame = requestAnimationFrame(paint);
    };
    const stop = () => {
      drag.stop();
      end.current();
    };
    frame = requestAnimationFrame(paint);
    for (const name of INPUTS) window.addEventListener(name, stop, { capture: true });
    return () => {
      cancelAnimationFrame(frame);
      for (const name of INPUTS) window.removeEventListener(name, stop, { capture: true });
      drag.stop();
    };
  }, [desk, view]);
  return (
    <svg ref={mark} className="example-mark" width="44" height="44" viewBox="-10 -10 44 44" aria-hidden="true">
      <circle r="9" />
      <path d="M0 0L0 21L5.4 16.2L9.2 24.6L13 22.9L9.2 14.6L16.4 14.2Z" />
    </svg>
  );
}
