import { Coffee, Plus, Printer } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Course } from '../../core/course/course.ts';
import { addBreak, addClass, changeDay } from '../../core/course/edit-day.ts';
import { printTimeOfDay, readTimeOfDay } from '../../core/measure/time-of-day.ts';
import type { DayQuestion } from '../change/plan-questions.ts';
import { useAnswer } from '../change/use-answer.ts';
import { useDesk, useDeskState, useSettledCourse } from '../desk-context.tsx';
import { TypedField } from '../set/typed-field.tsx';
import { DayAdvice } from './day-advice.tsx';
import { DayPrint } from './day-print.tsx';
import { DayTimeline } from './day-timeline.tsx';

/** The classes of the day in running order, with their times, and what would save time. */
export function DayPanel() {
  const desk = useDesk();
  const hasDay = useDeskState((state) => state.course.day !== undefined);
  const add = () => desk.edit('Add a class to the day', (now) => addClass(now, { layout: now.current }));
  if (!hasDay) {
    return (
      <div className="inspector">
        <p className="empty">
          Several classes in this arena on one day? List them with the layout that each rides: you get the times, what
          is changed over between them, and the order that needs the least of it.
        </p>
        <button type="button" className="button primary" onClick={add}>
          <Plus aria-hidden="true" />
          Plan the day
        </button>
      </div>
    );
  }
  return <PlannedDay add={add} />;
}

function PlannedDay({ add }: { add(): void }) {
  const desk = useDesk();
  const day = useDeskState((state) => state.course.day);
  const settled = useSettledCourse();
  const [prints, setPrints] = useState(false);
  const question = useMemo(() => dayQuestion(settled), [settled]);
  const { answer, isBusy, failure } = useAnswer(question);
  const planned = answer?.told ?? null;
  if (day === undefined) return null;
  const start = (text: string) => {
    const read = readTimeOfDay(text);
    if (read.kind === 'refused') return read.why;
    desk.edit('Change when the day begins', (now) => changeDay(now, { starts: read.value }));
    return undefined;
  };
  return (
    <div className="inspector" aria-busy={isBusy}>
      <TypedField wide label="The crew begins to set out at" value={printTimeOfDay(day.starts)} send={start} />
      <DayTimeline planned={planned} />
      <div className="button-row">
        <button type="button" className="button" onClick={add}>
          <Plus aria-hidden="true" />
          Class
        </button>
        <button type="button" className="button" onClick={() => desk.edit('Add a break', (now) => addBreak(now))}>
          <Coffee aria-hidden="true" />
          Break
        </button>
      </div>
      <p className="small" role="status">
        {isBusy ? 'Working out the times…' : ''}
      </p>
      {failure !== null && <p className="refusal">The day could not be worked out: {failure}</p>}
      {answer !== null && planned !== null && (
        <>
          <DayAdvice planned={planned} course={answer.of.course} />
          <button type="button" className="button" onClick={() => setPrints(true)}>
            <Printer aria-hidden="true" />
            Print the day
          </button>
          {prints && <DayPrint planned={planned} course={answer.of.course} close={() => setPrints(false)} />}
        </>
      )}
    </div>
  );
}

function dayQuestion(course: Course): DayQuestion | null {
  return course.day === undefined ? null : { kind: 'day', course };
}
