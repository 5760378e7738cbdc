import { type ClassEntry, MOST_ENTRIES } from '../../core/course/course.ts';
import { entryCount } from '../../core/course/entry-count.ts';
import { goWords } from '../../words/go.ts';
import { terms } from '../../words/terms.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { TypedField } from '../set/typed-field.tsx';

/** How many ride: typed, or told where a list says who they are. */
export function EntriesField() {
  const desk = useDesk();
  const about = useDeskState((state) => state.course.class);
  if (about.list !== undefined) return <ListedEntries count={entryCount(about)} />;
  const send = (text: string) => {
    const entries = text.trim() === '' ? 0 : Number(text);
    if (!Number.isInteger(entries) || entries < 0 || entries > MOST_ENTRIES) {
      return goWords.entriesRefused(MOST_ENTRIES);
    }
    const change = (of: ClassEntry): ClassEntry => ({ ...of, entries });
    desk.edit(goWords.changeTheEntries, (now) => ({ ...now, class: change(now.class) }));
    return undefined;
  };
  return <TypedField label={terms.entries} value={about.entries === 0 ? '' : String(about.entries)} send={send} />;
}

/** How many ride by a list. */
export function ListedEntries({ count }: { readonly count: number }) {
  return (
    <div className="field">
      <span className="field-name">{terms.entries}</span>
      <p className="field-note">{goWords.asListed(count)}</p>
    </div>
  );
}
