import { Trash2 } from 'lucide-react';
import type { DayBreak } from '../../core/course/course.ts';
import { changeBreak, removeBreak } from '../../core/course/edit-day.ts';
import { printDuration, readDuration } from '../../core/measure/duration.ts';
import { printTimeOfDay, readTimeOfDay } from '../../core/measure/time-of-day.ts';
import type { Refusal } from '../../desk/input.ts';
import { dayWords } from '../../words/day.ts';
import { useDesk } from '../desk-context.tsx';
import { TypedField } from '../set/typed-field.tsx';

/** When a break is and how long. */
export function BreakFields({ of }: { readonly of: DayBreak }) {
  const desk = useDesk();
  const change = (next: Parameters<typeof changeBreak>[2]) =>
    desk.edit(dayWords.changeTheBreak(of.title), (now) => changeBreak(now, of.id, next));
  const from = (text: string): Refusal => {
    const read = readTimeOfDay(text);
    if (read.kind === 'refused') return read.why;
    change({ from: read.value });
    return undefined;
  };
  const length = (text: string): Refusal => {
    const read = readDuration(text, 'min');
    if (read.kind === 'refused') return read.why;
    change({ length: read.value });
    return undefined;
  };
  const title = (text: string): Refusal => {
    if (text.trim() === '') return dayWords.breakNeedsName;
    change({ title: text.trim() });
    return undefined;
  };
  return (
    <div className="timeline-fields">
      <TypedField wide label={dayWords.break} value={of.title} send={title} />
      <div className="fields">
        <TypedField label={dayWords.from} value={printTimeOfDay(of.from)} send={from} />
        <TypedField label={dayWords.for} value={printDuration(of.length)} send={length} />
      </div>
      <button
        type="button"
        className="button danger"
        onClick={() => desk.edit(dayWords.deleteBreak(of.title), (now) => removeBreak(now, of.id))}
      >
        <Trash2 aria-hidden="true" />
        {dayWords.deleteThisBreak}
      </button>
    </div>
  );
}
