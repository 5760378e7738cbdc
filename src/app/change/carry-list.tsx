import {
  type CarryNames,
  carryStops,
  changeOverCautions,
  countedLoads,
  loadWords,
  stopPlace,
  teamWords,
  truckLoads,
} from '../../core/change/carry-words.ts';
import type { Carry, ChangeOver } from '../../core/change/change-over.ts';
import { carryNames } from '../../core/change/layout-change-over.ts';
import type { Course } from '../../core/course/course.ts';
import { printMinutes } from '../../core/measure/duration.ts';
import { printLength } from '../../core/measure/length.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { changeWords } from '../../words/change.ts';
import { useCompared } from './compared.ts';
import type { ChangeOverQuestion } from './plan-questions.ts';

/** Every carry in the order of walking, pass by pass and team by team, and what the truck gives and takes. */
export function CarryList({ plan, of }: { readonly plan: ChangeOver; readonly of: ChangeOverQuestion }) {
  const { course, from, to } = of;
  if (plan.carries.length === 0) return null;
  const { out, back } = truckLoads(plan);
  const names = carryNames(course, { from, to });
  const passes = Array.from({ length: plan.passes }, (_, i) => i + 1);
  return (
    <>
      <dl className="facts is-wordy">
        <div>
          <dt>{changeWords.comesFromTruck}</dt>
          <dd>{countedLoads(out, course.unit)}</dd>
        </div>
        <div>
          <dt>{changeWords.goesToTruck}</dt>
          <dd>{countedLoads(back, course.unit)}</dd>
        </div>
      </dl>
      {passes.map((pass) =>
        plan.teams.map((team, index) => {
          const carries = plan.carries.filter((carry) => carry.pass === pass && carry.team === index);
          if (carries.length === 0) return null;
          const title = [
            plan.passes > 1 ? changeWords.passNumber(pass) : changeWords.inThisOrder,
            plan.teams.length > 1 ? changeWords.teamNumber(index + 1, teamWords(team.people)) : teamWords(team.people),
          ].join(', ');
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: teams are known by their place.
            <section key={`${pass} ${index}`} aria-label={title}>
              <h3>{title}</h3>
              <ol className="rows carries">
                {carries.map((carry) => (
                  <CarryRow key={carry.number} carry={carry} course={course} names={names} />
                ))}
              </ol>
            </section>
          );
        }),
      )}
      {changeOverCautions(plan).map((caution) => (
        <p key={caution} className="caution">
          {caution}
        </p>
      ))}
    </>
  );
}

function CarryRow({
  carry,
  course: { arena, unit },
  names,
}: {
  readonly carry: Carry;
  readonly course: Course;
  readonly names: CarryNames;
}) {
  const compared = useCompared();
  const { from, to } = carryStops(carry, names);
  const each = printLength(carry.metres / carry.load.held.length, unit);
  return (
    <li
      value={carry.number}
      onPointerEnter={() => compared.focusCarry(carry.number)}
      onPointerLeave={() => compared.focusCarry(null)}
    >
      <button
        type="button"
        className="row"
        // A finger does not hover, and not every browser focuses what it presses.
        onClick={() => compared.focusCarry(carry.number)}
        onFocus={() => compared.focusCarry(carry.number)}
        onBlur={() => compared.focusCarry(null)}
      >
        <span className="number">{carry.number}</span>
        <span className="row-title">
          {capitalized(loadWords(carry.load, unit))}, {each}
          <small>
            {changeWords.from(carry.from.kind === 'truck' ? from : `${from}, ${stopPlace(carry.from, arena, unit)}`)}
          </small>
          <small>{changeWords.to(carry.to.kind === 'truck' ? to : `${to}, ${stopPlace(carry.to, arena, unit)}`)}</small>
          <small>{changeWords.doneAfter(printMinutes(carry.ends))}</small>
        </span>
      </button>
    </li>
  );
}
