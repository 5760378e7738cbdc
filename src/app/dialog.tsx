import { type ReactNode, useEffect, useId, useRef } from 'react';

/** A modal dialog of the browser: focus stays in it, Escape closes it, and the focus goes back. */
export function Dialog({
  title,
  close,
  children,
  wide,
  hasVerb,
}: {
  readonly title: string;
  close(): void;
  readonly children: ReactNode;
  readonly wide?: true;
  /** Something else in it is the main action: the close button is secondary. */
  readonly hasVerb?: true;
}) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    element?.showModal();
    return () => element?.close();
  }, []);
  return (
    <dialog ref={dialog} className={wide ? 'dialog wide' : 'dialog'} aria-labelledby={id} onClose={close}>
      <h2 id={id}>{title}</h2>
      {children}
      <div className="dialog-end">
        <button type="button" className={hasVerb ? 'button' : 'button primary'} onClick={close}>
          Close
        </button>
      </div>
    </dialog>
  );
}
