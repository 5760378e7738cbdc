import { Trash2 } from 'lucide-react';
import type { DayClass, Level } from '../../core/course/course.ts';
import { changeClass, removeClass } from '../../core/course/edit-day.ts';
import { printTimeOfDay, readTimeOfDay } from '../../core/measure/time-of-day.ts';
import type { Refusal } from '../../desk/input.ts';
import { LEVEL_WORDS } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { TypedField } from '../set/typed-field.tsx';

const MOST_ENTRIES = 500;

/** What is fixed about one class of the day. */
export function ClassFields({ of }: { readonly of: DayClass }) {
  const desk = useDesk();
  const layouts = useDeskState((state) => state.course.layouts);
  const change = (label: string, next: Parameters<typeof changeClass>[2]) =>
    desk.edit(`${label} of ${of.title}`, (now) => changeClass(now, of.id, next));
  const title = (text: string): Refusal => {
    if (text.trim() === '') return 'A class needs a name.';
    change('Change the name', { title: text.trim() });
    return undefined;
  };
  const entries = (text: string): Refusal => {
    const count = Number(text);
    if (text.trim() === '' || !Number.isInteger(count) || count < 0 || count > MOST_ENTRIES) {
      return `Entries is a whole number from 0 to ${MOST_ENTRIES}.`;
    }
    change('Change the entries', { entries: count });
    return undefined;
  };
  const startsAt = (text: string): Refusal => {
    if (text.trim() === '') {
      change('Free the start', { startsAt: undefined });
      return undefined;
    }
    const read = readTimeOfDay(text);
    if (read.kind === 'refused') return read.why;
    change('Fix the start', { startsAt: read.value });
    return undefined;
  };
  const judge = (text: string): Refusal => {
    change('Change the judge', { judge: text.trim() === '' ? undefined : text.trim() });
    return undefined;
  };
  const riders = (text: string): Refusal => {
    const names = text.split(/[,;]/).map((name) => name.trim());
    const given = [...new Set(names.filter((name) => name !== ''))];
    change('Change the riders', { riders: given.length === 0 ? undefined : given });
    return undefined;
  };
  return (
    <div className="timeline-fields">
      <TypedField wide label="Class" value={of.title} send={title} />
      <ChoiceField
        label="Rides"
        value={of.layout}
        options={Object.fromEntries(layouts.map((layout) => [layout.id, layout.title]))}
        choose={(layout) => change('Change the layout', { layout })}
      />
      <div className="fields">
        <ChoiceField
          label="Level"
          value={of.level}
          options={LEVEL_WORDS}
          choose={(level) => change('Change the level', { level: level as Level })}
        />
        <TypedField label="Entries" value={String(of.entries)} send={entries} />
        <TypedField
          label="Not before"
          value={of.startsAt === undefined ? '' : printTimeOfDay(of.startsAt)}
          send={startsAt}
        />
        <TypedField label="Judge" value={of.judge ?? ''} send={judge} />
      </div>
      <TypedField
        wide
        label="Riders who ride in other classes too"
        value={(of.riders ?? []).join(', ')}
        note="Names or numbers, with commas."
        send={riders}
      />
      <button
        type="button"
        className="button danger"
        onClick={() => desk.edit(`Take ${of.title} out of the day`, (now) => removeClass(now, of.id))}
      >
        <Trash2 aria-hidden="true" />
        Take it out of the day
      </button>
    </div>
  );
}
