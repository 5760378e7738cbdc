import { useId } from 'react';

type Pairs = readonly (readonly [id: string, title: string])[];
/** Titles by id; as pairs where an id may be a number, which a record would put first. */
type Choices = Readonly<Record<string, string>> | Pairs;

/** One of several, by name. */
export function ChoiceField({
  label,
  value,
  options,
  choose,
  refusal,
  wide,
}: {
  readonly label: string;
  readonly value: string;
  readonly options: Choices;
  choose(id: string): void;
  /** Why what is chosen will not do. */
  readonly refusal?: string | undefined;
  /** Over both columns of fields. */
  readonly wide?: boolean;
}) {
  const id = useId();
  return (
    <div className={wide === true ? 'field wide' : 'field'}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-invalid={refusal !== undefined}
        aria-describedby={refusal === undefined ? undefined : `${id}-why`}
        onChange={(event) => choose(event.target.value)}
      >
        {pairsOf(options).map(([key, title]) => (
          <option key={key} value={key}>
            {title}
          </option>
        ))}
      </select>
      {refusal !== undefined && (
        <p id={`${id}-why`} className="refusal" role="alert">
          {refusal}
        </p>
      )}
    </div>
  );
}

function pairsOf(choices: Choices): Pairs {
  // The type of Array.isArray does not know lists that are only read.
  return Array.isArray(choices) ? (choices as Pairs) : Object.entries(choices);
}
