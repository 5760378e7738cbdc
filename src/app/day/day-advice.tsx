import type { DayOrder } from '../../core/change/day-order.ts';
import type { BrokenRule, RiderWait } from '../../core/change/day-times.ts';
import type { Course } from '../../core/course/course.ts';
import { orderClasses } from '../../core/course/edit-day.ts';
import { printMinutes } from '../../core/measure/duration.ts';
import { printTimeOfDay } from '../../core/measure/time-of-day.ts';
import { counted } from '../app-words.ts';
import type { DayPlan } from '../change/plan-questions.ts';
import { useDesk } from '../desk-context.tsx';

/** The totals of the day, what of the fixed things is not kept, and a better order. */
export function DayAdvice({
  planned: { given, best },
  course,
  isBusy,
}: {
  readonly planned: DayPlan;
  readonly course: Course;
  readonly isBusy: boolean;
}) {
  const { times } = given;
  const titleOf = (id: string) => course.day?.classes.find((each) => each.id === id)?.title ?? id;
  return (
    <>
      <h3>The whole day</h3>
      <dl className="facts">
        <div>
          <dt>From</dt>
          <dd>
            {printTimeOfDay(times.starts)} to {printTimeOfDay(times.finish)}, an estimate
          </dd>
        </div>
        <div>
          <dt>Setting out and changing over</dt>
          <dd>{printMinutes(times.changing)}</dd>
        </div>
      </dl>
      {times.broken.map((rule) => (
        <p key={JSON.stringify(rule)} className="refusal" role="alert">
          {brokenWords(rule, titleOf)}
        </p>
      ))}
      {times.waits.map((wait) => (
        <p key={`${wait.id} ${wait.before}`} className="caution">
          {waitWords(wait, titleOf)}
        </p>
      ))}
      <BetterOrder given={given} best={best} titleOf={titleOf} isBusy={isBusy} />
    </>
  );
}

function brokenWords(rule: BrokenRule, titleOf: (id: string) => string): string {
  if (rule.kind === 'late') return `${titleOf(rule.id)} begins ${printMinutes(rule.by)} late.`;
  return `The classes of judge ${rule.judge} are in ${rule.blocks} parts of the day.`;
}

function waitWords({ id, before, riders, waits }: RiderWait, titleOf: (id: string) => string): string {
  return `${titleOf(id)} waits ${printMinutes(waits)} for ${riders.join(', ')} after ${titleOf(before)}.`;
}

function BetterOrder({
  given,
  best,
  titleOf,
  isBusy,
}: {
  readonly given: DayOrder;
  readonly best: DayOrder;
  titleOf(id: string): string;
  readonly isBusy: boolean;
}) {
  const desk = useDesk();
  const { order } = best.times;
  if (order.join(' ') === given.times.order.join(' ')) {
    return (
      <p className="empty is-good">
        {best.proven ? 'No other order is better.' : `No better order was found among many that were tried.`}
      </p>
    );
  }
  const gains = [
    ...gain('mends', given.cost.broken - best.cost.broken, (count) =>
      counted(count, 'thing that is fixed', 'things that are fixed'),
    ),
    ...gain('ends', given.cost.finish - best.cost.finish, (seconds) => `${printMinutes(seconds)} earlier`),
    ...gain(
      'needs',
      given.cost.changing - best.cost.changing,
      (seconds) => `${printMinutes(seconds)} less changing over`,
    ),
  ];
  return (
    <>
      <h3>A better order</h3>
      <p>It {gains.join(', ')}.</p>
      <ol className="better-order">
        {order.map((id) => (
          <li key={id}>{titleOf(id)}</li>
        ))}
      </ol>
      <button
        type="button"
        className="button primary"
        disabled={isBusy}
        onClick={() => desk.edit('Take the better order', (now) => orderClasses(now, order))}
      >
        Take this order
      </button>
      {best.proven && <p className="small">No order is better: all were weighed.</p>}
    </>
  );
}

/** What a better order gains in one respect; nothing where it gains less than a minute or none. */
function gain(verb: string, by: number, words: (by: number) => string): readonly string[] {
  return by >= 1 ? [`${verb} ${words(by)}`] : [];
}
