import type { ClassEntry } from '../../core/course/course.ts';
import { printDuration, readDuration } from '../../core/measure/duration.ts';
import type { Seconds } from '../../core/measure/quantity.ts';
import { USUAL_CLASS } from '../../core/ride/class-clock.ts';
import type { Refusal } from '../../desk/input.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { TypedField } from '../set/typed-field.tsx';

const MOST_ENTRIES = 500;

/** What of a class is typed as a time; empty puts the usual back. */
type Times = 'changeover' | 'drag' | 'allotted';

const LEAD_CHANGES = { either: 'Simple or flying', simple: 'Simple', flying: 'Flying' } as const;

function readWhole(text: string): number | undefined {
  const value = text.trim() === '' ? 0 : Number(text);
  return Number.isInteger(value) && value >= 0 && value <= MOST_ENTRIES ? value : undefined;
}

/** Who rides it and what comes between the goes; as typed here it is on the posted pattern too. */
export function ClassFields() {
  const desk = useDesk();
  const about = useDeskState((state) => state.course.class);
  const put = (label: string, next: Partial<ClassEntry>, absent?: Times | 'leadChange') =>
    desk.edit(label, (course) => {
      const made = { ...course.class, ...next };
      if (absent !== undefined) delete made[absent];
      return { ...course, class: made };
    });
  const time =
    (field: Times, label: string, bare: 's' | 'min') =>
    (text: string): Refusal => {
      if (text.trim() === '') {
        put(label, {}, field);
        return undefined;
      }
      const read = readDuration(text, bare);
      if (read.kind === 'refused') return read.why;
      put(label, { [field]: read.value });
      return undefined;
    };
  const shown = (value: Seconds | undefined, usual?: Seconds) =>
    value === undefined && usual === undefined ? '' : printDuration(value ?? usual ?? 0);
  const { dragEvery = USUAL_CLASS.dragEvery } = about;
  return (
    <div className="fields">
      <TypedField
        label="Entries"
        value={about.entries === 0 ? '' : String(about.entries)}
        send={(text) => {
          const entries = readWhole(text);
          if (entries === undefined) return `Entries is a whole number from 0 to ${MOST_ENTRIES}.`;
          put('Change the entries', { entries });
          return undefined;
        }}
      />
      <TypedField
        label="May take"
        hint="How long the class may take, such as 2 h; empty for as long as it takes"
        value={shown(about.allotted)}
        send={time('allotted', 'Change the time of the class', 'min')}
      />
      <TypedField
        label="Between goes"
        hint="From the end of one go to the start of the next; empty for the usual"
        value={shown(about.changeover, USUAL_CLASS.changeover)}
        send={time('changeover', 'Change the time between goes', 's')}
      />
      <TypedField
        label="Drag after (goes)"
        hint="After how many goes the ground is dragged; 0 for never"
        value={dragEvery === 0 ? 'never' : String(dragEvery)}
        send={(text) => {
          const goes = text.trim().toLowerCase() === 'never' ? 0 : readWhole(text);
          if (goes === undefined)
            return `A drag comes after a whole number of goes from 1 to ${MOST_ENTRIES}, or never.`;
          put('Change when the ground is dragged', { dragEvery: goes });
          return undefined;
        }}
      />
      <TypedField
        label="A drag takes"
        hint="With what has to be set again; empty for the usual"
        value={shown(about.drag, USUAL_CLASS.drag)}
        send={time('drag', 'Change how long a drag takes', 'min')}
      />
      <ChoiceField
        label="Change of lead"
        value={about.leadChange ?? 'either'}
        options={LEAD_CHANGES}
        choose={(how) =>
          how === 'simple' || how === 'flying'
            ? put('Change how leads are changed', { leadChange: how })
            : put('Change how leads are changed', {}, 'leadChange')
        }
      />
    </div>
  );
}
