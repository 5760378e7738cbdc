import '../styles/first.css';
import { newCourseWords, emptyWords as words } from '../../words/first-visit.ts';
import { useCourseSaver } from '../autosave-context.tsx';
import { FEW_STARTERS, STARTERS } from '../file/starters.ts';
import { openDoor } from './doors.ts';
import { StarterCard } from './starter-card.tsx';
import { useStarterCourses } from './starter-courses.ts';

/** What lies over an arena without obstacles: what to do first, and courses to begin from. */
export function EmptyArena() {
  const saver = useCourseSaver();
  const known = useStarterCourses(FEW_STARTERS);
  return (
    <section className="empty-arena" aria-labelledby="empty-arena">
      <h2 id="empty-arena">{words.title}</h2>
      <p>{words.says}</p>
      <ul className="starters">
        {FEW_STARTERS.map((name) => (
          <li key={name}>
            <StarterCard
              name={name}
              title={STARTERS.find((each) => each.name === name)?.title ?? name}
              starter={known.get(name)}
              choose={(course) => saver.openNew(course)}
            />
          </li>
        ))}
      </ul>
      <div className="button-row">
        <button type="button" className="button" aria-haspopup="dialog" onClick={() => openDoor('starters')}>
          {words.all}
        </button>
        <button type="button" className="button" aria-haspopup="dialog" onClick={() => openDoor('new-course')}>
          {newCourseWords.open}
        </button>
      </div>
    </section>
  );
}
