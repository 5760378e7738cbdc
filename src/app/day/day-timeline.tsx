import { ArrowDown, ArrowUp } from 'lucide-react';
import { type DragEvent, Fragment, useState } from 'react';
import type { ClassTimes, DayTimes } from '../../core/change/day-times.ts';
import type { DayBreak, DayClass } from '../../core/course/course.ts';
import { dayEntryCount } from '../../core/course/day-class.ts';
import { moveClass } from '../../core/course/edit-day.ts';
import { printMinutes } from '../../core/measure/duration.ts';
import type { Seconds } from '../../core/measure/quantity.ts';
import { printTimeOfDay } from '../../core/measure/time-of-day.ts';
import { dayWords } from '../../words/day.ts';
import { terms } from '../../words/terms.ts';
import type { DayPlan } from '../change/plan-questions.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { BreakFields } from './break-fields.tsx';
import { ClassFields } from './class-fields.tsx';

/** Height of an hour, px: a class of twenty minutes is still a target for a finger. */
const HOUR_HEIGHT = 72;

function heightOf(seconds: Seconds): number {
  return (seconds / 3600) * HOUR_HEIGHT;
}

/** The classes one below the other, as high as they take long, with what lies between; a class is moved by drag or button. */
export function DayTimeline({ planned }: { readonly planned: DayPlan | null }) {
  const desk = useDesk();
  const day = useDeskState((state) => state.course.day);
  const [dragged, setDragged] = useState<string | null>(null);
  const [opened, setOpened] = useState<string | null>(null);
  if (day === undefined) return null;
  const times = planned?.given.times;
  const put = (id: string, to: number) =>
    desk.edit(dayWords.reorderTheClasses, (now) =>
      moveClass(now, id, Math.max(0, Math.min(day.classes.length - 1, to))),
    );
  const drop = (event: DragEvent, to: number) => {
    event.preventDefault();
    if (dragged !== null) put(dragged, to);
    setDragged(null);
  };
  const toggle = (id: string) => setOpened(opened === id ? null : id);
  return (
    <ol className="timeline" aria-label={dayWords.theDay}>
      {day.classes.map((each, index) => {
        const own = times?.classes.find(({ id }) => id === each.id);
        return (
          <Fragment key={each.id}>
            {breaksBefore(day.breaks, times, own).map((pause) => (
              <BreakRow key={pause.id} pause={pause} times={times} isOpen={opened === pause.id} toggle={toggle} />
            ))}
            {own !== undefined && <ChangeRow own={own} isFirst={index === 0} />}
            <li
              className={dragged === each.id ? 'timeline-class is-dragged' : 'timeline-class'}
              draggable
              style={{ minHeight: heightOf(own === undefined ? 0 : own.to - own.from) }}
              onDragStart={() => setDragged(each.id)}
              onDragEnd={() => setDragged(null)}
              onDragOver={(event) => event.preventDefault()}
              onDrop={(event) => drop(event, index)}
            >
              <div className="timeline-head">
                <button
                  type="button"
                  className="row"
                  aria-expanded={opened === each.id}
                  onClick={() => toggle(each.id)}
                >
                  <ClassWords of={each} own={own} />
                </button>
                <button
                  type="button"
                  className="quiet"
                  disabled={index === 0}
                  aria-label={dayWords.rideEarlier(each.title)}
                  onClick={() => put(each.id, index - 1)}
                >
                  <ArrowUp aria-hidden="true" />
                </button>
                <button
                  type="button"
                  className="quiet"
                  disabled={index === day.classes.length - 1}
                  aria-label={dayWords.rideLater(each.title)}
                  onClick={() => put(each.id, index + 1)}
                >
                  <ArrowDown aria-hidden="true" />
                </button>
              </div>
              {opened === each.id && <ClassFields of={each} />}
            </li>
          </Fragment>
        );
      })}
      {breaksAfter(day.breaks, times).map((pause) => (
        <BreakRow key={pause.id} pause={pause} times={times} isOpen={opened === pause.id} toggle={toggle} />
      ))}
      {times !== undefined && times.classes.length > 0 && (
        <li className="timeline-change">
          {dayWords.takingDown(
            printTimeOfDay(times.takingDown.from),
            printMinutes(times.takingDown.to - times.takingDown.from),
            printTimeOfDay(times.finish),
          )}
        </li>
      )}
    </ol>
  );
}

function ClassWords({ of, own }: { readonly of: DayClass; readonly own: ClassTimes | undefined }) {
  const layout = useDeskState((state) => state.course.layouts.find(({ id }) => id === of.layout)?.title ?? of.layout);
  const entries = useDeskState((state) => dayEntryCount(state.course, of));
  const drags = own?.drags.map(({ from }) => printTimeOfDay(from)) ?? [];
  return (
    <span className="row-title">
      {of.title}
      {own !== undefined && (
        <strong className="timeline-times">{dayWords.fromTo(printTimeOfDay(own.from), printTimeOfDay(own.to))}</strong>
      )}
      <small>
        {layout}, {terms.countedEntries(entries)}
        {of.judge === undefined ? '' : dayWords.judge(of.judge)}
        {of.startsAt === undefined ? '' : dayWords.notBeforeTime(printTimeOfDay(of.startsAt))}
      </small>
      {drags.length > 0 && <small>{dayWords.groundDraggedAt(drags.join(', '))}</small>}
    </span>
  );
}

/** What the crew does before a class, and for what it then waits. */
function ChangeRow({ own, isFirst }: { readonly own: ClassTimes; readonly isFirst: boolean }) {
  const change = own.change.to - own.change.from;
  if (change === 0 && own.idle === 0) return null;
  return (
    <li className="timeline-change" style={{ minHeight: heightOf(change + own.idle) }}>
      {change > 0 && (
        <>
          {printTimeOfDay(own.change.from)} {isFirst ? dayWords.settingOut : dayWords.changingOver},{' '}
          {printMinutes(change)}
        </>
      )}
      {own.idle >= 60 && <span className="timeline-idle">{dayWords.idleFor(printMinutes(own.idle))}</span>}
    </li>
  );
}

function BreakRow({
  pause,
  times,
  isOpen,
  toggle,
}: {
  readonly pause: DayBreak;
  readonly times: DayTimes | undefined;
  readonly isOpen: boolean;
  toggle(id: string): void;
}) {
  const own = times?.breaks.find(({ id }) => id === pause.id);
  return (
    <li className="timeline-break" style={{ minHeight: heightOf(pause.length) }}>
      <button type="button" className="row" aria-expanded={isOpen} onClick={() => toggle(pause.id)}>
        <span className="row-title">
          {pause.title}
          <strong className="timeline-times">
            {dayWords.fromTo(
              printTimeOfDay(own?.from ?? pause.from),
              printTimeOfDay(own?.to ?? pause.from + pause.length),
            )}
          </strong>
        </span>
      </button>
      {isOpen && <BreakFields of={pause} />}
    </li>
  );
}

/** The breaks that end before a class begins and after the one before it began. */
function breaksBefore(
  breaks: readonly DayBreak[],
  times: DayTimes | undefined,
  own: ClassTimes | undefined,
): readonly DayBreak[] {
  if (times === undefined || own === undefined) return [];
  const index = times.classes.indexOf(own);
  const before = times.classes[index - 1]?.from ?? Number.NEGATIVE_INFINITY;
  const here = times.breaks.filter(({ from }) => from >= before && from < own.from).map(({ id }) => id);
  return breaks.filter(({ id }) => here.includes(id));
}

function breaksAfter(breaks: readonly DayBreak[], times: DayTimes | undefined): readonly DayBreak[] {
  const last = times?.classes.at(-1);
  if (times === undefined || last === undefined) return breaks;
  const told = times.breaks.filter(({ from }) => from < last.from).map(({ id }) => id);
  return breaks.filter(({ id }) => !told.includes(id));
}
