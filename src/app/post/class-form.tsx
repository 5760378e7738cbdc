import { useId } from 'react';
import type { ClassEntry, Level } from '../../core/course/course.ts';
import { LEVEL_WORDS } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { TypedField } from '../set/typed-field.tsx';

const MOST_ENTRIES = 500;

/** Who rides it, and when: the head of the page. */
export function ClassPanel() {
  const desk = useDesk();
  const course = useDeskState((state) => state.course);
  const date = useId();
  const about = course.class;
  const change = (label: string, next: Partial<ClassEntry>) =>
    desk.edit(label, (now) => ({ ...now, class: { ...now.class, ...next } }));
  return (
    <div className="inspector one-column">
      <TypedField
        wide
        label="Course"
        value={course.title}
        send={(title) => {
          desk.edit('Name the course', (now) => ({ ...now, title: title.trim() }));
          return undefined;
        }}
      />
      <TypedField
        wide
        label="Show"
        value={about.show}
        send={(show) => {
          change('Name the show', { show: show.trim() });
          return undefined;
        }}
      />
      <TypedField
        wide
        label="Class"
        value={about.title}
        send={(title) => {
          change('Name the class', { title: title.trim() });
          return undefined;
        }}
      />
      <div className="fields">
        <ChoiceField
          label="Level"
          value={about.level}
          options={LEVEL_WORDS}
          choose={(level) => change('Change the level', { level: level as Level })}
        />
        <TypedField
          label="Entries"
          value={about.entries === 0 ? '' : String(about.entries)}
          send={(text) => {
            const entries = text.trim() === '' ? 0 : Number(text);
            if (!Number.isInteger(entries) || entries < 0 || entries > MOST_ENTRIES) {
              return `Entries is a whole number from 0 to ${MOST_ENTRIES}.`;
            }
            change('Change the entries', { entries });
            return undefined;
          }}
        />
        <div className="field wide">
          <label htmlFor={date}>Date</label>
          <input
            id={date}
            type="date"
            value={about.date}
            onChange={(event) => change('Change the date', { date: event.target.value })}
          />
        </div>
      </div>
      <Notes />
    </div>
  );
}

function Notes() {
  const desk = useDesk();
  const id = useId();
  const notes = useDeskState((state) => state.course.notes);
  return (
    <div className="field wide">
      <label htmlFor={id}>Notes on the page</label>
      <textarea
        id={id}
        key={notes}
        rows={4}
        defaultValue={notes}
        onBlur={(event) => {
          const text = event.target.value;
          if (text !== notes) desk.edit('Write notes', (course) => ({ ...course, notes: text }));
        }}
      />
    </div>
  );
}
