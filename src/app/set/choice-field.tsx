import { useId } from 'react';

/** One of several, by name. */
export function ChoiceField({
  label,
  value,
  options,
  choose,
  refusal,
}: {
  readonly label: string;
  readonly value: string;
  readonly options: Readonly<Record<string, string>>;
  choose(id: string): void;
  /** Why what is chosen will not do. */
  readonly refusal?: string | undefined;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-invalid={refusal !== undefined}
        aria-describedby={refusal === undefined ? undefined : `${id}-why`}
        onChange={(event) => choose(event.target.value)}
      >
        {Object.entries(options).map(([key, title]) => (
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
