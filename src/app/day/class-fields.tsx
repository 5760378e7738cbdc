import { Trash2 } from 'lucide-react';
import type { DayClass, Level } from '../../core/course/course.ts';
import { dayEntryCount, listingOf } from '../../core/course/day-class.ts';
import { changeClass, removeClass } from '../../core/course/edit-day.ts';
import { printTimeOfDay, readTimeOfDay } from '../../core/measure/time-of-day.ts';
import type { Refusal } from '../../desk/input.ts';
import { dayWords } from '../../words/day.ts';
import { terms } from '../../words/terms.ts';
import { LEVEL_WORDS } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ListedEntries } from '../go/entries-field.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { TypedField } from '../set/typed-field.tsx';

const MOST_ENTRIES = 500;

/** What is fixed about one class of the day. */
export function ClassFields({ of }: { readonly of: DayClass }) {
  const desk = useDesk();
  const layouts = useDeskState((state) => state.course.layouts);
  const isListed = useDeskState(({ course }) => listingOf(course, of).list !== undefined);
  const listed = useDeskState(({ course }) => dayEntryCount(course, of));
  const change = (label: string, next: Parameters<typeof changeClass>[2]) =>
    desk.edit(dayWords.changeOfClass(label, of.title), (now) => changeClass(now, of.id, next));
  const title = (text: string): Refusal => {
    if (text.trim() === '') return dayWords.classNeedsName;
    change(dayWords.changeTheName, { title: text.trim() });
    return undefined;
  };
  const entries = (text: string): Refusal => {
    const count = Number(text);
    if (text.trim() === '' || !Number.isInteger(count) || count < 0 || count > MOST_ENTRIES) {
      return dayWords.entriesRefused(MOST_ENTRIES);
    }
    change(dayWords.changeTheEntries, { entries: count });
    return undefined;
  };
  const startsAt = (text: string): Refusal => {
    if (text.trim() === '') {
      change(dayWords.freeTheStart, { startsAt: undefined });
      return undefined;
    }
    const read = readTimeOfDay(text);
    if (read.kind === 'refused') return read.why;
    change(dayWords.fixTheStart, { startsAt: read.value });
    return undefined;
  };
  const judge = (text: string): Refusal => {
    change(dayWords.changeTheJudge, { judge: text.trim() === '' ? undefined : text.trim() });
    return undefined;
  };
  const riders = (text: string): Refusal => {
    const names = text.split(/[,;]/).map((name) => name.trim());
    const given = [...new Set(names.filter((name) => name !== ''))];
    change(dayWords.changeTheRiders, { riders: given.length === 0 ? undefined : given });
    return undefined;
  };
  return (
    <div className="timeline-fields">
      <TypedField wide label={dayWords.class} value={of.title} send={title} />
      <ChoiceField
        label={dayWords.rides}
        value={of.layout}
        options={Object.fromEntries(layouts.map((layout) => [layout.id, layout.title]))}
        choose={(layout) => change(dayWords.changeTheLayout, { layout })}
      />
      <div className="fields">
        <ChoiceField
          label={terms.level}
          value={of.level}
          options={LEVEL_WORDS}
          choose={(level) => change(dayWords.changeTheLevel, { level: level as Level })}
        />
        {isListed ? (
          <ListedEntries count={listed} />
        ) : (
          <TypedField label={terms.entries} value={String(of.entries)} send={entries} />
        )}
        <TypedField
          label={dayWords.notBefore}
          value={of.startsAt === undefined ? '' : printTimeOfDay(of.startsAt)}
          send={startsAt}
        />
        <TypedField label={terms.judge} value={of.judge ?? ''} send={judge} />
      </div>
      <TypedField
        wide
        label={dayWords.ridersInOtherClasses}
        value={(of.riders ?? []).join(', ')}
        note={dayWords.ridersNote}
        send={riders}
      />
      <button
        type="button"
        className="button danger"
        onClick={() => desk.edit(dayWords.deleteClass(of.title), (now) => removeClass(now, of.id))}
      >
        <Trash2 aria-hidden="true" />
        {dayWords.deleteThisClass}
      </button>
    </div>
  );
}
