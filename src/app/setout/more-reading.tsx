import { Plus } from 'lucide-react';
import { useState } from 'react';
import { setoutWords } from '../../words/setout.ts';
import { ChoiceField } from '../set/choice-field.tsx';
import { moreId, type TapePlace } from './readings.ts';

/** One more reading than the plan has: straight from one place of the part to another. */
export function MoreReading({ places, add }: { readonly places: readonly TapePlace[]; add(id: string): void }) {
  const [from, setFrom] = useState(places[0]?.id ?? '');
  const [to, setTo] = useState(places.at(-1)?.id ?? '');
  const titles = Object.fromEntries(places.map(({ id, title }) => [id, title]));
  const [start, end] = [from, to].map((id) => places.find((each) => each.id === id));
  const refusal = from === to ? setoutWords.samePlaces : undefined;
  if (places.length < 2) return null;
  return (
    <div className="setout-more">
      <ChoiceField label={setoutWords.fromPlace} value={from} options={titles} choose={setFrom} />
      <ChoiceField label={setoutWords.toPlace} value={to} options={titles} choose={setTo} refusal={refusal} />
      <button
        type="button"
        className="button"
        aria-disabled={refusal !== undefined}
        onClick={() => {
          if (start !== undefined && end !== undefined && start !== end) add(moreId(start, end));
        }}
      >
        <Plus aria-hidden="true" />
        {setoutWords.addReading}
      </button>
    </div>
  );
}
