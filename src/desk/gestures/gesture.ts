import type { Course } from '../../core/course/course.ts';
import type { Pose } from '../../core/plane/pose.ts';
import type { PointerInput } from '../input.ts';
import type { Commit } from '../plan.ts';
import type { Keys } from '../selection/selection.ts';
import type { Guide } from '../snapping/guide.ts';

/**
 * One pointer's gesture, as a value: what it shows now, and what it becomes. The desk shows it, and puts the plan of
 * `done()` into the history; a gesture that is cancelled is dropped, and nothing has to be restored.
 */
export interface Gesture {
  /** The preview; null: the course as it was. */
  readonly course: Course | null;
  readonly chosen: Keys;
  readonly guides: readonly Guide[];
  /** "Moving Fan 1"; null while it may still become a tap. */
  readonly doing: string | null;
  /** Something to say at once, such as why a fixed piece stays. */
  readonly said?: string;
  /** What moves along with the one piece that is dragged, in words; absent: nothing does. */
  readonly along?: string;
  /** The piece, and where the pointer asked for it, so that it can be moved there alone afterwards. */
  readonly piece?: { readonly key: string; readonly pose: Pose };
  moved(input: PointerInput): Gesture;
  commit(): Commit;
}
