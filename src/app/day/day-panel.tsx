import { Coffee, Plus, Printer } from 'lucide-react';
import { useMemo, useState } from 'react';
import type { Course } from '../../core/course/course.ts';
import { addBreak, addClass, changeDay } from '../../core/course/edit-day.ts';
import { printTimeOfDay, readTimeOfDay } from '../../core/measure/time-of-day.ts';
import { dayWords } from '../../words/day.ts';
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
  const add = () => desk.edit(dayWords.addClassDay, (now) => addClass(now, { layout: now.current }));
  if (!hasDay) {
    return (
      <div className="inspector">
        <p className="empty">{dayWords.noDay}</p>
        <button type="button" className="button primary" onClick={add}>
          <Plus aria-hidden="true" />
          {dayWords.planTheDay}
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
    desk.edit(dayWords.changeStart, (now) => changeDay(now, { starts: read.value }));
    return undefined;
  };
  return (
    <div className="inspector" aria-busy={isBusy}>
      <TypedField wide label={dayWords.crewBeginsAt} value={printTimeOfDay(day.starts)} send={start} />
      <DayTimeline planned={planned} />
      <div className="button-row">
        <button type="button" className="button" onClick={add}>
          <Plus aria-hidden="true" />
          {dayWords.class}
        </button>
        <button type="button" className="button" onClick={() => desk.edit(dayWords.addABreak, (now) => addBreak(now))}>
          <Coffee aria-hidden="true" />
          {dayWords.break}
        </button>
      </div>
      <p className="small" role="status">
        {isBusy ? dayWords.workingOut : ''}
      </p>
      {failure !== null && <p className="refusal">{dayWords.failed(failure)}</p>}
      {answer !== null && planned !== null && (
        <>
          <DayAdvice planned={planned} course={answer.of.course} />
          <button type="button" className="button" onClick={() => setPrints(true)}>
            <Printer aria-hidden="true" />
            {dayWords.printTheDay}
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
