import { useId } from 'react';
import { LONGEST_NAME } from '../../core/course/course.ts';

/** A field of the form that is read when the form is sent. */
export function PlainField({
  label,
  text,
  hint,
  refusal,
  write,
  wide,
  mostSigns = LONGEST_NAME,
}: {
  readonly label: string;
  readonly text: string;
  readonly hint?: string;
  readonly refusal: string | undefined;
  write(text: string): void;
  readonly wide?: true;
  readonly mostSigns?: number;
}) {
  const id = useId();
  return (
    <div className={wide ? 'field wide' : 'field'}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={text}
        placeholder={hint}
        autoComplete="off"
        maxLength={mostSigns}
        spellCheck={false}
        aria-invalid={refusal !== undefined}
        aria-describedby={refusal === undefined ? undefined : `${id}-why`}
        onChange={(event) => write(event.target.value)}
      />
      {refusal !== undefined && (
        <p id={`${id}-why`} className="refusal" role="alert">
          {refusal}
        </p>
      )}
    </div>
  );
}
