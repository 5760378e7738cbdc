import type { ClassEntry } from '../../core/course/course.ts';
import { printDuration, readDuration } from '../../core/measure/duration.ts';
import type { Seconds } from '../../core/measure/quantity.ts';
import { USUAL_CLASS } from '../../core/ride/class-clock.ts';
import type { Refusal } from '../../desk/input.ts';
import { rideWords } from '../../words/ride.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { EntriesField } from '../go/entries-field.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { TypedField } from '../set/typed-field.tsx';

const MOST_ENTRIES = 500;

/** What of a class is typed as a time; empty puts the usual back. */
type Times = 'changeover' | 'drag' | 'allotted';

const LEAD_CHANGES = { either: rideWords.simpleOrFlying, simple: rideWords.simple, flying: rideWords.flying } as const;

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
      <EntriesField />
      <TypedField
        label={rideWords.timeAllowed}
        hint={rideWords.timeAllowedHint}
        value={shown(about.allotted)}
        send={time('allotted', rideWords.changeTimeAllowed, 'min')}
      />
      <TypedField
        label={rideWords.betweenGoes}
        hint={rideWords.betweenGoesHint}
        value={shown(about.changeover, USUAL_CLASS.changeover)}
        send={time('changeover', rideWords.changeTimeBetweenGoes, 's')}
      />
      <TypedField
        label={rideWords.dragAfterGoes}
        hint={rideWords.dragAfterHint}
        value={dragEvery === 0 ? rideWords.never : String(dragEvery)}
        send={(text) => {
          const goes = text.trim().toLowerCase() === rideWords.never ? 0 : readWhole(text);
          if (goes === undefined) return rideWords.dragAfterRefused(MOST_ENTRIES);
          put(rideWords.changeDragAfter, { dragEvery: goes });
          return undefined;
        }}
      />
      <TypedField
        label={rideWords.aDragTakes}
        hint={rideWords.dragTakesHint}
        value={shown(about.drag, USUAL_CLASS.drag)}
        send={time('drag', rideWords.changeDragTakes, 'min')}
      />
      <ChoiceField
        label={rideWords.changeOfLead}
        value={about.leadChange ?? 'either'}
        options={LEAD_CHANGES}
        choose={(how) =>
          how === 'simple' || how === 'flying'
            ? put(rideWords.changeLeadChange, { leadChange: how })
            : put(rideWords.changeLeadChange, {}, 'leadChange')
        }
      />
    </div>
  );
}
