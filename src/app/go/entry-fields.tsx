import { Trash2 } from 'lucide-react';
import type { Entry } from '../../core/course/course.ts';
import { type ClassChoice, changeEntry, type EntryChange, removeEntry } from '../../core/course/edit-entries.ts';
import { isWornNumber } from '../../core/go/entry-columns.ts';
import type { Refusal } from '../../desk/input.ts';
import { goWords } from '../../words/go.ts';
import { useDesk } from '../desk-context.tsx';
import { TypedField } from '../set/typed-field.tsx';
import { entryName } from './entry-name.ts';

/** A day, minutes. */
const MOST_LATE = 1440;

/** What is known of one entry, and what became of it. */
export function EntryFields({ entry, of }: { readonly entry: Entry; readonly of: ClassChoice }) {
  const desk = useDesk();
  const { id, number, rider, horse, scratched, late } = entry;
  const name = entryName(entry);
  const change = (label: string, next: EntryChange) => desk.edit(label, (now) => changeEntry(now, id, next, of));
  const text =
    (field: 'number' | 'rider' | 'horse') =>
    (typed: string): Refusal => {
      change(goWords.changeEntry(goWords[field], name), { [field]: typed.trim() });
      return undefined;
    };
  const worn = (typed: string): Refusal => {
    if (typed.trim() !== '' && !isWornNumber(typed)) return goWords.numberRefused;
    return text('number')(typed.replace('#', ''));
  };
  const minutes = (typed: string): Refusal => {
    const value = Number(typed.trim().replace(',', '.'));
    if (!(value >= 0 && value <= MOST_LATE)) return goWords.lateRefused(MOST_LATE);
    change(goWords.changeEntry(goWords.minutesLate, name), { late: value === 0 ? undefined : value * 60 });
    return undefined;
  };
  return (
    <div className="timeline-fields">
      <div className="fields">
        <TypedField label={goWords.number} value={number} send={worn} />
        <TypedField
          label={goWords.minutesLate}
          value={late === undefined ? '' : String(Math.round((late / 60) * 100) / 100)}
          hint={goWords.lateHint}
          send={minutes}
        />
      </div>
      <TypedField wide label={goWords.rider} value={rider} send={text('rider')} />
      <TypedField wide label={goWords.horse} value={horse} send={text('horse')} />
      <div className="button-row">
        <button
          type="button"
          className="button"
          aria-pressed={scratched === true}
          onClick={() =>
            scratched
              ? change(goWords.unscratchName(name), { scratched: undefined })
              : change(goWords.scratchName(name), { scratched: true })
          }
        >
          {scratched ? goWords.unscratch : goWords.scratch}
        </button>
        <button
          type="button"
          className="button danger"
          onClick={() => desk.edit(goWords.deleteEntryName(name), (now) => removeEntry(now, id, of))}
        >
          <Trash2 aria-hidden="true" />
          {goWords.deleteEntry}
        </button>
      </div>
    </div>
  );
}
