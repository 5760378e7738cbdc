import '../styles/first.css';
import type { Course } from '../../core/course/course.ts';
import { starterWords as words } from '../../words/first-visit.ts';
import { useCourseSaver } from '../autosave-context.tsx';
import { Dialog } from '../dialog.tsx';
import { STARTERS } from '../file/starters.ts';
import { closeDoor } from './doors.ts';
import { StarterCard } from './starter-card.tsx';
import { easiestFirst, useStarterCourses } from './starter-courses.ts';

const NAMES = STARTERS.map(({ name }) => name);

/** All starters with their pictures, the easiest first. */
export function StartersDialog() {
  const saver = useCourseSaver();
  const known = useStarterCourses(NAMES);
  const areRead = NAMES.every((name) => known.has(name));
  const sorted = areRead ? [...STARTERS].sort((a, b) => easiestFirst(known.get(a.name), known.get(b.name))) : STARTERS;
  const choose = (course: Course) => {
    saver.openNew(course);
    closeDoor();
  };
  return (
    <Dialog wide title={words.title} close={closeDoor}>
      <p className="small">{words.lead}</p>
      <ul className="starters">
        {sorted.map(({ name, title }) => (
          <li key={name}>
            <StarterCard name={name} title={title} starter={known.get(name)} choose={choose} />
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
