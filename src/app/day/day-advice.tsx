import type { DayOrder } from '../../core/change/day-order.ts';
import {
  brokenWords,
  DAY_CAUTION,
  DAY_PARTS,
  savesWords,
  untakenWords,
  waitWords,
} from '../../core/change/day-words.ts';
import type { Course, Day } from '../../core/course/course.ts';
import { sharedWith } from '../../core/course/shared-structure.ts';
import { printMinutes } from '../../core/measure/duration.ts';
import { printTimeOfDay } from '../../core/measure/time-of-day.ts';
import { dayWords } from '../../words/day.ts';
import type { DayPlan, TriedSaving } from '../change/plan-questions.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';

/** So many proposals are told at once. */
const FIRST = 4;

/** The totals of the day, what of the fixed things is not kept, and what would save time. */
export function DayAdvice({ planned, course }: { readonly planned: DayPlan; readonly course: Course }) {
  const { day } = course;
  if (day === undefined) return null;
  const { given, best, total, parts, savings } = planned;
  const { times } = given;
  const row = (saving: TriedSaving) => <Saving key={saving.says} saving={saving} from={course} best={best} day={day} />;
  return (
    <>
      <h3>{dayWords.theWholeDay(printMinutes(total))}</h3>
      <dl className="facts">
        <div>
          <dt>{dayWords.fromFirstToLast}</dt>
          <dd>{dayWords.fromTo(printTimeOfDay(times.starts), printTimeOfDay(times.finish))}</dd>
        </div>
        {DAY_PARTS.filter(([part]) => parts[part] > 0).map(([part, title]) => (
          <div key={part}>
            <dt>{title}</dt>
            <dd>{printMinutes(parts[part])}</dd>
          </div>
        ))}
      </dl>
      {times.broken.map((rule) => (
        <p key={JSON.stringify(rule)} className="refusal">
          {brokenWords(day, rule)}
        </p>
      ))}
      {[...times.waits.map((wait) => waitWords(day, wait)), ...untakenWords(day, times)].map((words) => (
        <p key={words} className="small">
          {words}
        </p>
      ))}
      <h3>{dayWords.whatWouldSaveTime}</h3>
      {savings.length === 0 && <p className="empty is-good">{dayWords.nothingSavesTime}</p>}
      <ul className="rows savings">{savings.slice(0, FIRST).map(row)}</ul>
      {savings.length > FIRST && (
        <details className="fold">
          <summary>{dayWords.moreSavings(savings.length - FIRST)}</summary>
          <ul className="rows savings">{savings.slice(FIRST).map(row)}</ul>
        </details>
      )}
      {!savings.some(({ kind }) => kind === 'order') && (
        <p className="small">{best.proven ? dayWords.orderIsBest : dayWords.noBetterOrderFound}</p>
      )}
      <p className="caution">{DAY_CAUTION}</p>
    </>
  );
}

/** One proposal, with the button that takes it as long as the course is the one that it was tried on. */
function Saving({
  saving: { kind, says, saves, course: edited },
  from,
  best,
  day,
}: {
  readonly saving: TriedSaving;
  readonly from: Course;
  readonly best: DayOrder;
  readonly day: Day;
}) {
  const desk = useDesk();
  const isCurrent = useDeskState((state) => state.course === from);
  const order = best.times.order.flatMap((id) => day.classes.find((each) => each.id === id)?.title ?? []);
  return (
    <li className="saving">
      <p>
        {says} <strong>{savesWords(saves)}</strong>
      </p>
      {kind === 'order' && (
        <>
          <ol className="better-order">
            {order.map((title, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two classes may have one title.
              <li key={i}>{title}</li>
            ))}
          </ol>
          {best.proven && <p className="small">{dayWords.allOrdersTried}</p>}
        </>
      )}
      {edited !== undefined && (
        <button
          type="button"
          className={kind === 'order' ? 'button primary' : 'button'}
          disabled={!isCurrent}
          aria-label={kind === 'order' ? undefined : dayWords.applySaving(says)}
          onClick={() => desk.edit(dayWords.saveTime(says), (now) => sharedWith(edited, now))}
        >
          {kind === 'order' ? dayWords.takeThisOrder : dayWords.apply}
        </button>
      )}
    </li>
  );
}
