import { type RefObject, useEffect, useState } from 'react';
import { currentLayout } from '../../core/course/course.ts';
import type { CourseReading } from '../../core/files/read.ts';
import { printLength } from '../../core/measure/length.ts';
import { fileWords } from '../../words/file.ts';
import { terms } from '../../words/terms.ts';
import { STARTERS } from './starters.ts';

/** The starters by their own titles, which are read when the menu first opens: nothing of them is in the first load. */
export function Starters({
  menu,
  take,
}: {
  readonly menu: RefObject<HTMLDivElement | null>;
  take(reading: CourseReading): void;
}) {
  const [readings, setReadings] = useState<ReadonlyMap<string, CourseReading>>(new Map());
  useEffect(() => {
    const element = menu.current;
    const read = (event: Event) => {
      if ((event as ToggleEvent).newState !== 'open') return;
      element?.removeEventListener('beforetoggle', read);
      for (const { name, read: readStarter } of STARTERS) {
        void readStarter().then((reading) => setReadings((known) => new Map(known).set(name, reading)));
      }
    };
    element?.addEventListener('beforetoggle', read);
    return () => element?.removeEventListener('beforetoggle', read);
  }, [menu]);
  if (STARTERS.length === 0) return null;
  return (
    <>
      <hr />
      <h2>{fileWords.starters}</h2>
      {STARTERS.map((each) => {
        const reading = readings.get(each.name);
        return (
          <button
            key={each.name}
            type="button"
            data-starter={each.name}
            onClick={() => {
              menu.current?.hidePopover();
              void each.read().then(take);
            }}
          >
            {reading?.kind === 'read' ? reading.course.title : each.title}
            <small>{sizeWords(reading)}</small>
          </button>
        );
      })}
    </>
  );
}

/** `200' × 100', 8 obstacles`; room for it while it is not known. */
function sizeWords(reading: CourseReading | undefined): string {
  if (reading?.kind !== 'read') return '…';
  const { course } = reading;
  const { length, width } = course.arena;
  const obstacles = currentLayout(course).obstacles.length;
  return `${printLength(length, course.unit)} × ${printLength(width, course.unit)}, ${terms.obstacles(obstacles)}`;
}
