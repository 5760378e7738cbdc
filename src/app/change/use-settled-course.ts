import { useEffect, useState } from 'react';
import type { Course } from '../../core/course/course.ts';
import { useDeskState } from '../desk-context.tsx';

/** How long nothing changes before what takes long is worked out, ms. */
const SETTLED = 250;

/** The course as it was when it last lay still for a moment: what takes longer than a frame is worked out from it. */
export function useSettledCourse(): Course {
  const now = useDeskState((state) => state.course);
  const isDragging = useDeskState((state) => state.gesture !== null);
  const [settled, setSettled] = useState(now);
  useEffect(() => {
    if (isDragging || settled === now) return;
    const timer = setTimeout(() => setSettled(now), SETTLED);
    return () => clearTimeout(timer);
  }, [now, isDragging, settled]);
  return settled;
}
