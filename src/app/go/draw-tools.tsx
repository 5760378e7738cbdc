import { ArrowDown01, Dices } from 'lucide-react';
import { useState } from 'react';
import { type Draw, type Entry, MOST_ENTRIES } from '../../core/course/course.ts';
import { type ClassChoice, orderEntries } from '../../core/course/edit-entries.ts';
import { drawOrder, numberOrder } from '../../core/go/draw-order.ts';
import { drawnWords, drawWords } from '../../core/go/draw-words.ts';
import { usualBetween } from '../../core/go/usual-between.ts';
import type { Survey } from '../../core/survey.ts';
import { goWords } from '../../words/go.ts';
import { useDesk } from '../desk-context.tsx';
import { TypedField } from '../set/typed-field.tsx';

const LARGEST_SEED = 4_294_967_295;
/** A number that is easily told and typed again. */
const LARGEST_NEW_SEED = 9999;

function newSeed(): number {
  const [random = 0] = crypto.getRandomValues(new Uint32Array(1));
  return 1 + (random % LARGEST_NEW_SEED);
}

function readCount(text: string, most: number): number | undefined {
  const value = Number(text);
  return text.trim() !== '' && Number.isInteger(value) && value >= 0 && value <= most ? value : undefined;
}

/** The order by lot, repeatable by its number, or by number. */
export function DrawTools({
  list,
  drawn,
  survey,
  of,
}: {
  readonly list: readonly Entry[];
  readonly drawn: Draw | undefined;
  readonly survey: Survey;
  readonly of: ClassChoice;
}) {
  const desk = useDesk();
  const [seed, setSeed] = useState<number | null>(null);
  const [typed, setTyped] = useState<number | null>(null);
  const [said, setSaid] = useState<{ readonly of: typeof drawn; readonly says: string } | null>(null);
  const between = typed ?? usualBetween(survey);
  const draw = () => {
    const by = { seed: seed ?? newSeed(), between };
    const order = drawOrder(list, by);
    const kept = { seed: by.seed, between: order.between ?? 0 };
    desk.edit(goWords.drawTheOrder, (now) => orderEntries(now, order.order, { drawn: kept, of }));
    setSaid({ of: kept, says: drawnWords(by, order) });
  };
  const says = drawn === undefined ? '' : said?.of?.seed === drawn.seed ? said.says : drawWords(drawn);
  return (
    <>
      <div className="fields">
        <TypedField
          label={goWords.between}
          hint={goWords.betweenHint}
          value={String(between)}
          send={(text) => {
            const count = text.trim() === '' ? null : readCount(text, MOST_ENTRIES);
            if (count === undefined) return goWords.betweenRefused(MOST_ENTRIES);
            setTyped(count);
            return undefined;
          }}
        />
        <TypedField
          label={goWords.drawNumber}
          hint={goWords.drawNumberHint}
          value={seed === null ? '' : String(seed)}
          send={(text) => {
            const number = text.trim() === '' ? null : readCount(text, LARGEST_SEED);
            if (number === undefined) return goWords.drawNumberRefused(LARGEST_SEED);
            setSeed(number);
            return undefined;
          }}
        />
      </div>
      <div className="button-row">
        <button type="button" className="button" onClick={draw}>
          <Dices aria-hidden="true" />
          {goWords.drawTheOrder}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => desk.edit(goWords.orderByNumber, (now) => orderEntries(now, numberOrder(list), { of }))}
        >
          <ArrowDown01 aria-hidden="true" />
          {goWords.byNumber}
        </button>
      </div>
      <p className="small" role="status">
        {says}
      </p>
    </>
  );
}
