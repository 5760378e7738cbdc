import { useEffect, useId, useState } from 'react';
import { linkWords } from '../../words/link.ts';
import { useDeskState } from '../desk-context.tsx';
import { Dialog } from '../dialog.tsx';
import { linkBaseOf } from './link-base.ts';

/** The link of the open course: on the clipboard where the browser allows it, and to be copied by hand. */
export function LinkDialog({ close }: { close(): void }) {
  const course = useDeskState((state) => state.course);
  const id = useId();
  const [made, setMade] = useState<{ readonly link?: string; readonly isCopied?: boolean; readonly failure?: string }>(
    {},
  );
  useEffect(() => {
    let isOpen = true;
    void makeAndCopy();
    return () => {
      isOpen = false;
    };
    async function makeAndCopy() {
      try {
        const { courseLink } = await import('../../core/files/course-link.ts');
        const link = courseLink(course, location.origin + location.pathname);
        const isCopied = await navigator.clipboard.writeText(link).then(
          () => true,
          () => false,
        );
        if (isOpen) setMade({ link, isCopied });
      } catch (failure) {
        if (isOpen) setMade({ failure: failure instanceof Error ? failure.message : String(failure) });
      }
    }
  }, [course]);
  const { link, isCopied, failure } = made;
  return (
    <Dialog title={isCopied === true ? linkWords.linkCopied : linkWords.linkToCopy} close={close}>
      {failure !== undefined && <p role="alert">{linkWords.linkNotMade(failure)}</p>}
      {link !== undefined && (
        <>
          <p>{linkWords.linkHolds(link.length)}</p>
          {linkBaseOf(location) === undefined && <p className="caution">{linkWords.onlyHere}</p>}
          <div className="field wide">
            <label htmlFor={id}>{linkWords.linkField}</label>
            <input id={id} readOnly value={link} onFocus={(event) => event.target.select()} />
          </div>
        </>
      )}
    </Dialog>
  );
}
