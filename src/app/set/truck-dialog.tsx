import { Plus, Trash2 } from 'lucide-react';
import { type FormEvent, useState } from 'react';
import type { Stock } from '../../core/course/course.ts';
import type { Param } from '../../core/pieces/params.ts';
import { PIECE_KINDS, pieceKind } from '../../core/pieces/pieces.ts';
import { setWords } from '../../words/set.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { Dialog } from '../dialog.tsx';
import { ChoiceField } from './choice-field.tsx';
import { PlainField } from './plain-field.tsx';
import {
  type LineErrors,
  readLine,
  readStockCount,
  sizesWords,
  withCount,
  withLine,
  withoutLine,
} from './truck-lines.ts';
import { TypedField } from './typed-field.tsx';

/** The lines of the truck: what there is, how many, and what is added or taken off. */
export function TruckDialog({ close }: { close(): void }) {
  const truck = useDeskState((state) => state.course.truck);
  return (
    <Dialog wide title={setWords.whatOnTruck} close={close}>
      {truck.length === 0 ? (
        <p className="empty">{setWords.courseNoTruckList}</p>
      ) : (
        <ul className="truck-lines">
          {truck.map((stock) => (
            <Line key={stock.id} stock={stock} />
          ))}
        </ul>
      )}
      <NewLine />
    </Dialog>
  );
}

function Line({ stock }: { readonly stock: Stock }) {
  const desk = useDesk();
  const unit = useDeskState((state) => state.course.unit);
  const kind = pieceKind(stock.kind);
  const sizes = kind === undefined ? '' : sizesWords(kind, stock.values, unit);
  const count = (text: string) => {
    const read = readStockCount(text);
    if (typeof read === 'string') return read;
    desk.edit(setWords.changeCount(stock.title), (course) => withCount(course, stock.id, read));
    return undefined;
  };
  return (
    <li>
      <span className="row-title">
        {stock.title}
        <small>
          {kind?.title ?? stock.kind}, {sizes === '' ? setWords.anySize : sizes}
        </small>
      </span>
      <TypedField isLabelHidden label={setWords.howMany(stock.title)} value={String(stock.count)} send={count} />
      <button
        type="button"
        className="quiet"
        aria-label={setWords.takeOffTruck(stock.title)}
        title={setWords.takeThisLineOff}
        onClick={() => desk.edit(setWords.takeOffTheTruck(stock.title), (course) => withoutLine(course, stock.id))}
      >
        <Trash2 aria-hidden="true" />
      </button>
    </li>
  );
}

const KINDS = Object.fromEntries(PIECE_KINDS.map((kind) => [kind.id, kind.title]));
const FRESH = { title: '', count: '1', sizes: {} } as const;

function NewLine() {
  const desk = useDesk();
  const unit = useDeskState((state) => state.course.unit);
  const [kindId, setKind] = useState(PIECE_KINDS[0]?.id ?? '');
  const [typed, setTyped] = useState<{
    readonly title: string;
    readonly count: string;
    readonly sizes: Readonly<Record<string, string>>;
  }>(FRESH);
  const [refusals, setRefusals] = useState<LineErrors>({});
  const kind = pieceKind(kindId);
  const write = (key: string, text: string) => {
    setTyped(
      key === 'title' || key === 'count'
        ? { ...typed, [key]: text }
        : { ...typed, sizes: { ...typed.sizes, [key]: text } },
    );
    setRefusals({ ...refusals, [key]: undefined });
  };
  const add = (event: FormEvent) => {
    event.preventDefault();
    const read = readLine({ kind: kindId, ...typed }, unit);
    if ('refusals' in read) {
      setRefusals(read.refusals);
      return;
    }
    desk.edit(setWords.putOnTruck(read.line.title), (course) => withLine(course, read.line));
    setTyped(FRESH);
    setRefusals({});
  };
  return (
    <form className="new-line" onSubmit={add} noValidate>
      <h3>{setWords.addALine}</h3>
      <p className="small">{setWords.fillOnlySizesTell}</p>
      <div className="fields">
        <ChoiceField
          label={setWords.what}
          value={kindId}
          options={KINDS}
          choose={(id) => {
            setKind(id);
            setTyped({ ...typed, sizes: {} });
            setRefusals({});
          }}
        />
        <PlainField
          label={setWords.howManyField}
          text={typed.count}
          refusal={refusals.count}
          write={(text) => write('count', text)}
        />
        {Object.entries(kind?.params ?? {}).map(([key, param]) => (
          <Size
            key={key}
            param={param}
            text={typed.sizes[key] ?? ''}
            refusal={refusals[key]}
            write={(text) => write(key, text)}
          />
        ))}
        <PlainField
          label={setWords.nameOnList}
          hint={setWords.madeFromKindSizes}
          text={typed.title}
          refusal={undefined}
          write={(text) => write('title', text)}
        />
      </div>
      <button type="submit" className="button">
        <Plus aria-hidden="true" />
        {setWords.putItOnTheTruck}
      </button>
    </form>
  );
}

/** A size of a new line: any of the options, or what people type. */
function Size({
  param,
  ...rest
}: {
  readonly param: Param;
  readonly text: string;
  readonly refusal: string | undefined;
  write(text: string): void;
}) {
  if (param.kind !== 'choice') return <PlainField label={param.label} hint={setWords.any} {...rest} />;
  return (
    <ChoiceField
      label={param.label}
      value={rest.text}
      options={{ '': setWords.anyOption, ...param.options }}
      choose={rest.write}
    />
  );
}
