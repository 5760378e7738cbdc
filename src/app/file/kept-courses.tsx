import { type RefObject, useEffect, useState } from 'react';
import type { SavedCourse } from '../../storage/library.ts';
import { fileWords } from '../../words/file.ts';
import { terms } from '../../words/terms.ts';
import { useCourseSaver } from '../autosave-context.tsx';
import { savedAtWords } from './date-words.ts';

/** As many as a menu can show. */
const MOST = 6;

/** The other courses that this browser keeps, newest first; read anew each time the menu opens. */
export function SavedCourses({
  menu,
  refused,
}: {
  readonly menu: RefObject<HTMLDivElement | null>;
  refused(why: string): void;
}) {
  const keeper = useCourseSaver();
  const [courses, setCourses] = useState<readonly SavedCourse[]>([]);
  useEffect(() => {
    const element = menu.current;
    const read = (event: Event) => {
      if ((event as ToggleEvent).newState === 'open') void keeper.courses().then(setCourses);
    };
    element?.addEventListener('beforetoggle', read);
    return () => element?.removeEventListener('beforetoggle', read);
  }, [keeper, menu]);
  const others = courses.filter((each) => each.slot !== keeper.slot()).slice(0, MOST);
  if (others.length === 0) return null;
  const open = async (slot: string) => {
    menu.current?.hidePopover();
    const reading = await keeper.load(slot);
    if (reading.kind === 'refused') refused(reading.why);
  };
  return (
    <>
      <hr />
      <h2>{fileWords.inThisBrowser}</h2>
      {others.map((each) => (
        <button key={each.slot} data-kept={each.slot} type="button" onClick={() => void open(each.slot)}>
          {each.title === '' ? terms.untitledCourse : each.title}
          <small>{savedAtWords(each.saved)}</small>
        </button>
      ))}
    </>
  );
}
