import { lazyComponent } from '../lazy-panel.tsx';
import { useDoors } from './doors.ts';
import { HINTS, useFirstVisit } from './visit.ts';

const NewCourseDialog = lazyComponent(() => import('./new-course-dialog.tsx').then((module) => module.NewCourseDialog));
const StartersDialog = lazyComponent(() => import('./starters-dialog.tsx').then((module) => module.StartersDialog));

// Quiet: a notice in its place would push the arena down under the hand.
const FirstHints = lazyComponent(() => import('./first-hints.tsx').then((module) => module.FirstHints), null, 'quiet');

/** The dialogs from which a course is begun, wherever they were asked for. */
export function FirstDialogs() {
  const { open } = useDoors();
  if (open === null) return null;
  return open === 'new-course' ? <NewCourseDialog /> : <StartersDialog />;
}

/** The hints, which are loaded only where somebody has not put them all away. */
export function FirstHintsWhereNew() {
  const visit = useFirstVisit();
  if (visit !== null && visit.hints >= HINTS) return null;
  return <FirstHints />;
}
