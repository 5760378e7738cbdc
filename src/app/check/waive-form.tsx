import { type FormEvent, useEffect, useRef, useState } from 'react';
import { checkWords } from '../../words/check.ts';
import { PlainField } from '../set/plain-field.tsx';

/** Asks why a finding may stand: without a reason it may not. */
export function WaiveForm({ waive, close }: { waive(reason: string): void; close(): void }) {
  const [reason, setReason] = useState('');
  const [refusal, setRefusal] = useState<string | undefined>();
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => form.current?.querySelector('input')?.focus(), []);
  const send = (event: FormEvent) => {
    event.preventDefault();
    if (reason.trim() === '') setRefusal(checkWords.sayWhyReasonPrints);
    else waive(reason.trim());
  };
  return (
    <form
      ref={form}
      className="waive"
      aria-label={checkWords.waiveThisFinding}
      noValidate
      onSubmit={send}
      onKeyDown={(event) => {
        if (event.key === 'Escape') close();
      }}
    >
      <p className="small">{checkWords.waivedFindingStaysCourse}</p>
      <PlainField
        label={checkWords.reason}
        hint={checkWords.whoDecidedWhy}
        text={reason}
        refusal={refusal}
        write={(text) => {
          setReason(text);
          setRefusal(undefined);
        }}
      />
      <div className="button-row">
        <button type="submit" className="button primary">
          {checkWords.waiveIt}
        </button>
        <button type="button" className="button" onClick={close}>
          {checkWords.leaveItOpen}
        </button>
      </div>
    </form>
  );
}
