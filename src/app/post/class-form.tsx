import { useId } from 'react';
import type { ClassEntry, Level } from '../../core/course/course.ts';
import { postWords } from '../../words/post.ts';
import { terms } from '../../words/terms.ts';
import { LEVEL_WORDS } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { EntriesField } from '../go/entries-field.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { TypedField } from '../set/typed-field.tsx';

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
        label={postWords.course}
        value={course.title}
        send={(title) => {
          desk.edit(postWords.nameTheCourse, (now) => ({ ...now, title: title.trim() }));
          return undefined;
        }}
      />
      <TypedField
        wide
        label={postWords.show}
        value={about.show}
        send={(show) => {
          change(postWords.nameTheShow, { show: show.trim() });
          return undefined;
        }}
      />
      <TypedField
        wide
        label={postWords.class}
        value={about.title}
        send={(title) => {
          change(postWords.nameTheClass, { title: title.trim() });
          return undefined;
        }}
      />
      <div className="fields">
        <ChoiceField
          label={terms.level}
          value={about.level}
          options={LEVEL_WORDS}
          choose={(level) => change(postWords.changeTheLevel, { level: level as Level })}
        />
        <EntriesField />
        <div className="field wide">
          <label htmlFor={date}>{postWords.date}</label>
          <input
            id={date}
            type="date"
            value={about.date}
            onChange={(event) => change(postWords.changeTheDate, { date: event.target.value })}
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
      <label htmlFor={id}>{postWords.notesOnPage}</label>
      <textarea
        id={id}
        key={notes}
        rows={4}
        defaultValue={notes}
        onBlur={(event) => {
          const text = event.target.value;
          if (text !== notes) desk.edit(postWords.writeNotes, (course) => ({ ...course, notes: text }));
        }}
      />
    </div>
  );
}
