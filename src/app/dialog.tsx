import { type ReactNode, type RefObject, useId, useLayoutEffect, useRef } from 'react';
import { appWords } from '../words/app.ts';
import { terms } from '../words/terms.ts';

/**
 * Opens the dialog over everything while it is there. It is closed while it still is on the page: only then does the browser
 * give the focus back.
 */
function useModal(dialog: RefObject<HTMLDialogElement | null>, focus?: RefObject<HTMLButtonElement | null>): void {
  useLayoutEffect(() => {
    const element = dialog.current;
    element?.showModal();
    focus?.current?.focus();
    return () => element?.close();
  }, [dialog, focus]);
}

/** A choice that waits: what it is about, and a button that leaves everything as it was, which has the focus. */
export function ChoiceDialog({
  title,
  leave,
  children,
  actions,
}: {
  readonly title: string;
  leave(): void;
  readonly children: ReactNode;
  readonly actions?: ReactNode;
}) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  useModal(dialog, button);
  return (
    <dialog ref={dialog} className="dialog conflict-dialog" aria-labelledby={id} onCancel={leave}>
      <h2 id={id}>{title}</h2>
      {children}
      <div className="dialog-end">
        {actions}
        <button ref={button} type="button" className="button primary" onClick={leave}>
          {terms.leaveAsItWas}
        </button>
      </div>
    </dialog>
  );
}

/** A modal dialog of the browser: focus stays in it, Escape closes it, and the focus goes back. */
export function Dialog({
  title,
  close,
  children,
  wide,
  hasVerb,
  actions,
}: {
  readonly title: string;
  close(): void;
  readonly children: ReactNode;
  readonly wide?: true;
  /** Something else in it is the main action: the close button is secondary. */
  readonly hasVerb?: true;
  /** Beside the close button. */
  readonly actions?: ReactNode;
}) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useModal(dialog);
  return (
    <dialog ref={dialog} className={wide ? 'dialog wide' : 'dialog'} aria-labelledby={id} onCancel={close}>
      <h2 id={id}>{title}</h2>
      {children}
      <div className="dialog-end">
        <button type="button" className={hasVerb ? 'button' : 'button primary'} onClick={close}>
          {appWords.close}
        </button>
        {actions}
      </div>
    </dialog>
  );
}
