import { useEffect, useState } from 'react';
import type { Course } from '../../core/course/course.ts';
import { useDesk } from '../desk-context.tsx';

/** How long nothing changes before what takes long is worked out, ms. */
const SETTLED = 250;

/**
 * The course as it was when it last lay still for a moment: what takes longer than a frame is worked out from it. It does
 * not render while something is dragged.
 */
export function useSettledCourse(): Course {
  const desk = useDesk();
  const [settled, setSettled] = useState(() => desk.state().course);
  useEffect(() => {
    let seen: Course | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const watch = (): void => {
      const { course, gesture } = desk.state();
      if (course === seen && gesture === null) return;
      clearTimeout(timer);
      seen = gesture === null ? course : undefined;
      if (gesture === null) timer = setTimeout(() => setSettled(course), SETTLED);
    };
    const stop = desk.subscribe(watch);
    watch();
    return () => {
      stop();
      clearTimeout(timer);
    };
  }, [desk]);
  return settled;
}
