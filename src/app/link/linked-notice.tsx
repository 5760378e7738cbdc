import '../styles/link.css';
import { X } from 'lucide-react';
import { useEffect } from 'react';
import type { Course } from '../../core/course/course.ts';
import { linkWords } from '../../words/link.ts';
import { terms } from '../../words/terms.ts';
import { Dialog } from '../dialog.tsx';
import { usePlayer } from '../ride/player-context.tsx';
import { putLinked, useLinked } from './linked.ts';

/** Whose course came in the address, with its ride playing; or why it could not be opened. */
export function LinkedNotice() {
  const linked = useLinked();
  const close = () => putLinked({ kind: 'none' });
  if (linked.kind === 'none') return null;
  if (linked.kind === 'opened') return <Opened key={linked.course.title} course={linked.course} close={close} />;
  return (
    <Dialog title={linkWords.notOpened} close={close}>
      <p>{linked.why ?? linkWords.readerNotLoaded}</p>
      <p>{linkWords.stillHere}</p>
    </Dialog>
  );
}

function Opened({ course, close }: { readonly course: Course; close(): void }) {
  const player = usePlayer();
  useEffect(() => {
    // Who wants nothing to move by itself starts it with the button below.
    if (window.matchMedia('(prefers-reduced-motion: reduce)').matches) return;
    player.seek(0);
    player.play();
  }, [player]);
  const { title } = course;
  const whose = [course.class.title, course.class.show].filter((each) => each !== '').join(', ');
  return (
    <section className="notice linked" aria-label={linkWords.label}>
      <p role="status">
        <strong>{title === '' ? terms.untitledCourse : title}</strong>
        {whose === '' ? '' : ` (${whose})`}. {linkWords.cameInAddress}
      </p>
      <button type="button" className="quiet" aria-label={linkWords.close} title={linkWords.close} onClick={close}>
        <X aria-hidden="true" />
      </button>
    </section>
  );
}
