import { Suspense } from 'react';
import { lazyComponent } from '../lazy-panel.ts';
import { useDoors } from './doors.ts';

const NewCourseDialog = lazyComponent(() => import('./new-course-dialog.tsx').then((module) => module.NewCourseDialog));
const StartersDialog = lazyComponent(() => import('./starters-dialog.tsx').then((module) => module.StartersDialog));

/** The dialogs from which a course is begun, wherever they were asked for. */
export function FirstDialogs() {
  const { open } = useDoors();
  if (open === null) return null;
  return <Suspense>{open === 'new-course' ? <NewCourseDialog /> : <StartersDialog />}</Suspense>;
}
