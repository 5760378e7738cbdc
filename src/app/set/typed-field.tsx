import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { LONGEST_NAME } from '../../core/course/course.ts';
import type { Refusal } from '../../desk/input.ts';

/**
 * A field that takes what people type and sends it on Enter or when they leave it. What is refused stays in the field
 * with the reason beneath; Escape brings back what is true.
 */
export function TypedField({
  label,
  value,
  hint,
  send,
  wide,
  isLabelHidden,
  note,
}: {
  readonly label: string;
  readonly value: string;
  readonly hint?: string | undefined;
  send(text: string): Refusal;
  readonly wide?: true;
  /** The label is for those who do not see the row that the field stands in. */
  readonly isLabelHidden?: true;
  /** One short sentence below the field. */
  readonly note?: string | undefined;
}) {
  const id = useId();
  const [text, setText] = useState(value);
  const [refusal, setRefusal] = useState<string | undefined>();
  const shown = useRef(value);
  useEffect(() => {
    shown.current = value;
    setText(value);
    setRefusal(undefined);
  }, [value]);
  const commit = () => {
    if (text.trim() === shown.current.trim()) {
      setRefusal(undefined);
      return;
    }
    const why = send(text);
    setRefusal(why);
    // Read but equal to what was there: the value does not change, so the text must be put back by hand.
    if (why === undefined) setText(shown.current);
  };
  const key = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') {
      // A dialog that opens on Enter must not take the same key press for its first button.
      event.preventDefault();
      commit();
    }
    if (event.key !== 'Escape') return;
    setText(shown.current);
    setRefusal(undefined);
    event.stopPropagation();
  };
  const describedBy = refusal !== undefined ? `${id}-why` : note !== undefined ? `${id}-note` : undefined;
  return (
    <div className={wide ? 'field wide' : 'field'}>
      <label htmlFor={id} className={isLabelHidden ? 'visually-hidden' : undefined}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        value={text}
        autoComplete="off"
        maxLength={LONGEST_NAME}
        spellCheck={false}
        title={hint}
        aria-invalid={refusal !== undefined}
        aria-describedby={describedBy}
        onChange={(event) => setText(event.target.value)}
        onFocus={(event) => event.target.select()}
        onBlur={commit}
        onKeyDown={key}
      />
      {note !== undefined && refusal === undefined && (
        <p id={`${id}-note`} className="field-note">
          {note}
        </p>
      )}
      {refusal !== undefined && (
        <p id={`${id}-why`} className="refusal" role="alert">
          {refusal}
        </p>
      )}
    </div>
  );
}
