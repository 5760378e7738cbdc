import { useState } from 'react';
import type { TruckUse } from '../../core/survey.ts';
import type { Refusal } from '../../desk/input.ts';
import { setWords } from '../../words/set.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { lazyComponent } from '../lazy-panel.tsx';
import { readStockCount, withCount } from './truck-lines.ts';
import { TypedField } from './typed-field.tsx';

const TruckDialog = lazyComponent(() => import('./truck-dialog.tsx').then((module) => module.TruckDialog));

/** What the truck still holds, what the layout takes beyond it, and how much there is. */
export function TruckPanel() {
  const truck = useDeskState((state) => state.survey.truck);
  const [isCounting, setCounting] = useState(false);
  const [isListing, setListing] = useState(false);
  const hasLines = truck.some((use) => use.stock !== null);
  return (
    <>
      <div className="link-row">
        {hasLines && (
          <button type="button" className="link" aria-pressed={isCounting} onClick={() => setCounting(!isCounting)}>
            {isCounting ? setWords.showWhatLeft : setWords.changeTheCounts}
          </button>
        )}
        <button type="button" className="link" aria-haspopup="dialog" onClick={() => setListing(true)}>
          {setWords.editTheList}
        </button>
      </div>
      {isListing && <TruckDialog close={() => setListing(false)} />}
      {!hasLines && <p className="empty">{setWords.courseNoTruckListTake}</p>}
      {isCounting ? (
        <Counts truck={truck} />
      ) : (
        <ul className="truck">
          {truck.map((use) => (
            <Left key={use.stock?.id ?? use.title} use={use} />
          ))}
        </ul>
      )}
    </>
  );
}

function Left({ use }: { readonly use: TruckUse }) {
  const isOver = use.left < 0 || use.stock === null;
  const count = use.stock?.count ?? 0;
  return (
    <li className={isOver ? 'is-over' : ''}>
      <span>{use.title}</span>
      <span className="truck-left">
        {use.stock === null
          ? setWords.notOnIt(use.used)
          : isOver
            ? setWords.tooFew(-use.left)
            : setWords.ofLeft(use.left, count)}
      </span>
      {count > 0 && (
        <span className="bar" aria-hidden="true">
          <span style={{ width: `${Math.min(100, (100 * use.used) / count)}%` }} />
        </span>
      )}
    </li>
  );
}

function Counts({ truck }: { readonly truck: readonly TruckUse[] }) {
  const desk = useDesk();
  const send = (id: string, text: string): Refusal => {
    const count = readStockCount(text);
    if (typeof count === 'string') return count;
    desk.edit(setWords.changeTheTruck, (course) => withCount(course, id, count));
    return undefined;
  };
  return (
    <div className="fields">
      {truck.flatMap(({ stock }) =>
        stock === null
          ? []
          : [
              <TypedField
                key={stock.id}
                label={stock.title}
                value={String(stock.count)}
                send={(text) => send(stock.id, text)}
              />,
            ],
      )}
    </div>
  );
}
