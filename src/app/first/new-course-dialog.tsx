import '../styles/first.css';
import { type FormEvent, useId, useRef, useState } from 'react';
import { RULEBOOKS } from '../../core/checks/rulebooks/rulebooks.ts';
import type { Wall } from '../../core/constraints/constraint.ts';
import type { Level } from '../../core/course/course.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { newCourseWords as words } from '../../words/first-visit.ts';
import { LEVEL_WORDS } from '../app-words.ts';
import { useCourseSaver } from '../autosave-context.tsx';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { Dialog } from '../dialog.tsx';
import { WALLS } from '../set/arena-inspector.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { PlainField } from '../set/plain-field.tsx';
import { closeDoor, useDoors, writeForm } from './doors.ts';
import {
  emptyForm,
  formIn,
  furnitureOf,
  isSize,
  LATER,
  type NewCourseForm,
  type NewCourseRefusals,
  newCourse,
  POLE_LENGTHS,
  sidesOf,
  type TruckLoad,
  USUAL_SIZES,
  usualPoles,
} from './new-course.ts';

const NOTHING_WRONG: NewCourseRefusals = { poles: {} };

/** A change of the form, as its parts report it. */
type Write = (change: Partial<NewCourseForm>) => void;

interface PartProps {
  readonly form: NewCourseForm;
  readonly refusals: NewCourseRefusals;
  readonly write: Write;
}

/** The form for a new course. Enter makes the course; closed without it, the form stays as it was filled in. */
export function NewCourseDialog() {
  const desk = useDesk();
  const saver = useCourseSaver();
  const open = useDeskState((state) => state.course);
  const { form: left } = useDoors();
  const form = left ?? emptyForm(open.unit);
  const [refusals, setRefusals] = useState(NOTHING_WRONG);
  const id = useId();
  const element = useRef<HTMLFormElement>(null);
  const write: Write = (change) => {
    writeForm({ ...form, ...change });
    setRefusals(NOTHING_WRONG);
  };
  const begin = (event: FormEvent) => {
    event.preventDefault();
    const answer = newCourse(form, open);
    if ('refusals' in answer) {
      setRefusals(answer.refusals);
      // After React has marked the fields.
      requestAnimationFrame(() => element.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
      return;
    }
    saver.openNew(answer.course);
    desk.switchStage('set');
    writeForm(null);
    closeDoor();
  };
  const part = { form, refusals, write };
  return (
    <Dialog
      wide
      hasVerb
      title={words.title}
      close={closeDoor}
      actions={
        <button type="submit" form={id} className="button primary">
          {words.begin}
        </button>
      }
    >
      <form id={id} ref={element} className="new-course" onSubmit={begin} noValidate>
        <div className="fields">
          <PlainField
            label={words.name}
            hint={words.nameHint}
            text={form.title}
            refusal={undefined}
            write={(title) => write({ title })}
          />
          <ChoiceField
            label={words.unit}
            value={form.unit}
            options={words.units}
            choose={(unit) => write(formIn(form, unit as LengthUnit))}
          />
        </div>
        <ArenaPart {...part} />
        <TruckPart {...part} lines={open.truck.length} />
        <ClassPart {...part} />
        <p className="small">{words.kept}</p>
      </form>
    </Dialog>
  );
}

function ArenaPart({ form, refusals, write }: PartProps) {
  return (
    <fieldset>
      <legend>{words.arena}</legend>
      <fieldset className="usual-sizes" aria-label={words.usualSizes}>
        {USUAL_SIZES[form.unit].map((size) => {
          const sides = sidesOf(size, form.unit);
          return (
            <button
              key={sides.length}
              type="button"
              className="button"
              aria-pressed={isSize(form, size)}
              onClick={() => write(sides)}
            >
              {`${sides.length} × ${sides.width}`}
            </button>
          );
        })}
      </fieldset>
      <div className="fields">
        <PlainField
          label={words.length}
          text={form.length}
          refusal={refusals.length}
          write={(length) => write({ length })}
        />
        <PlainField
          label={words.width}
          text={form.width}
          refusal={refusals.width}
          write={(width) => write({ width })}
        />
        <ChoiceField
          label={words.wayIn}
          value={form.wall}
          options={WALLS}
          choose={(wall) => write({ wall: wall as Wall })}
        />
        <PlainField
          label={words.at}
          hint={words.atHint}
          text={form.at}
          refusal={refusals.at}
          write={(at) => write({ at })}
        />
      </div>
    </fieldset>
  );
}

function TruckPart({ form, refusals, write, lines }: PartProps & { readonly lines: number }) {
  const { load, unit } = form;
  const hasPoles = load === 'show' || load === 'home';
  const rest = furnitureOf(load).map(({ title, count }) => `${count} ${title.toLowerCase()}`);
  return (
    <fieldset>
      <legend>{words.truck}</legend>
      <div className="fields">
        <ChoiceField
          label={words.load}
          value={load}
          options={words.loads}
          choose={(next) => write({ load: next as TruckLoad, poles: usualPoles(next as TruckLoad) })}
        />
        {hasPoles &&
          POLE_LENGTHS.map((length, place) => (
            <PlainField
              key={length}
              label={words.poles(printLength(length, unit))}
              text={form.poles[place] ?? ''}
              refusal={refusals.poles[place]}
              write={(text) => write({ poles: form.poles.map((each, index) => (index === place ? text : each)) })}
            />
          ))}
      </div>
      <p className="small">
        {hasPoles ? words.besides(rest.join(', ')) : load === 'open' ? words.sameTruck(lines) : words.noTruck}
      </p>
    </fieldset>
  );
}

function ClassPart({ form, refusals, write }: PartProps) {
  const books = Object.fromEntries(RULEBOOKS.map((book) => [book.id, book.title]));
  return (
    <fieldset>
      <legend>{words.class}</legend>
      <div className="fields">
        <ChoiceField
          label={words.level}
          value={form.level}
          options={LEVEL_WORDS}
          choose={(level) => write({ level: level as Level })}
        />
        <ChoiceField
          label={words.book}
          value={form.book}
          options={{ '': words.askedBook, [LATER]: words.laterBook, ...books }}
          choose={(book) => write({ book })}
          refusal={refusals.book}
        />
      </div>
    </fieldset>
  );
}
