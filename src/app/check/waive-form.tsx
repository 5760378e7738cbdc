import { type FormEvent, useEffect, useRef, useState } from 'react';
import { PlainField } from '../set/plain-field.tsx';

/** Asks why a finding may stand: without a reason it may not. */
export function WaiveForm({ waive, close }: { waive(reason: string): void; close(): void }) {
  const [reason, setReason] = useState('');
  const [refusal, setRefusal] = useState<string | undefined>();
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => form.current?.querySelector('input')?.focus(), []);
  const send = (event: FormEvent) => {
    event.preventDefault();
    if (reason.trim() === '') setRefusal('Say why: the reason prints on the designer’s copy.');
    else waive(reason.trim());
  };
  return (
    <form
      ref={form}
      className="waive"
      aria-label="Waive this finding"
      noValidate
      onSubmit={send}
      onKeyDown={(event) => {
        if (event.key === 'Escape') close();
      }}
    >
      <p className="small">
        A waived finding stays in the course and prints, with your reason, on the designer’s copy. The judge may see it
        otherwise.
      </p>
      <PlainField
        label="Reason"
        hint="who decided it, and why"
        text={reason}
        refusal={refusal}
        write={(text) => {
          setReason(text);
          setRefusal(undefined);
        }}
      />
      <div className="button-row">
        <button type="submit" className="button primary">
          Waive it
        </button>
        <button type="button" className="button" onClick={close}>
          Leave it open
        </button>
      </div>
    </form>
  );
}
