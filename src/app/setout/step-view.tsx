import { ChevronLeft, ChevronRight } from 'lucide-react';
import { useLayoutEffect, useMemo, useRef, useSyncExternalStore } from 'react';
import type { Radians } from '../../core/measure/quantity.ts';
import type { Ground } from '../../core/setout/ground.ts';
import { setoutWords } from '../../words/setout.ts';
import type { ActPlace, PartActs } from './acts.ts';
import type { CompanionProps } from './companion-props.ts';
import { notesOfPart } from './notes.ts';
import { PartPicture } from './part-picture.tsx';

/** One thing to do: its picture, what the tape reads, the sentence, and its tick. */
export function StepView({
  survey,
  notes,
  place,
  part,
  facing,
  turn,
}: CompanionProps & {
  readonly place: ActPlace;
  readonly part: PartActs;
  readonly facing: Radians;
  turn(facing: Radians): void;
}) {
  const noted = useSyncExternalStore(notes.subscribe, notes.state);
  const { act } = place;
  const ground = useMemo(
    (): Ground => ({ arena: survey.course.arena, pieces: new Map(survey.pieces.map((each) => [each.key, each])) }),
    [survey],
  );
  const isDone = notesOfPart(noted, part.print).ticks.includes(act.id);
  return (
    <section className="setout-step" aria-label={setoutWords.stepOf(place.step + 1, part.steps.length)}>
      <PartPicture ground={ground} part={part} act={act} facing={facing} turn={turn} />
      <div className="setout-told">
        <p className="setout-lead" aria-live="polite">
          {part.steps[place.step]?.lead.join(' ')}
        </p>
        <div className="setout-act" aria-live="polite" aria-atomic="true">
          <h3>
            {act.head}
            {act.within !== undefined && <strong> · {setoutWords.within(act.within)}</strong>}
          </h3>
          <p className="setout-figure" data-figure={act.isRead || undefined} data-signs={figureSigns(act.figure)}>
            {act.figure}
          </p>
          <p className="setout-says" id="setout-says">
            {act.says.join(' ')}
          </p>
          {act.note !== undefined && <p className="small">{act.note}</p>}
        </div>
        <label className="setout-tick">
          <input
            type="checkbox"
            checked={isDone}
            aria-describedby="setout-says"
            onChange={() => notes.toggle(part.print, act.id)}
          />
          <span>{setoutWords.done}</span>
        </label>
      </div>
    </section>
  );
}

/** How much room a figure wants: its style knows a size for each. */
function figureSigns(figure: string): 'few' | 'some' | 'many' {
  return figure.length <= 7 ? 'few' : figure.length <= 8 ? 'some' : 'many';
}

/** Back and next: as large as a thumb finds them without looking. */
export function Steer({ back, next }: { readonly back: (() => void) | undefined; next(): void }) {
  const button = useRef<HTMLButtonElement>(null);
  // Whoever comes to the steps goes on from there.
  useLayoutEffect(() => button.current?.focus({ preventScroll: true }), []);
  return (
    <div className="setout-steer">
      <button type="button" className="setout-back" aria-disabled={back === undefined} onClick={back}>
        <ChevronLeft aria-hidden="true" />
        <span>{setoutWords.back}</span>
      </button>
      <button ref={button} type="button" className="setout-next" onClick={next}>
        <span>{setoutWords.next}</span>
        <ChevronRight aria-hidden="true" />
      </button>
    </div>
  );
}
