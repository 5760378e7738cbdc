import type { Course } from '../core/course/course.ts';
import type { HistoryStep, RecalledSteps } from '../core/course/history.ts';
import { sharedWith } from '../core/course/shared-structure.ts';
import { readCourseText } from './reader.ts';
import type { OpenedStep } from './step-log.ts';
import type { SavedStep } from './store.ts';

/** Waits until there is time for the next step: to read one takes some milliseconds. */
export type Pause = () => Promise<void>;

/** A stored step with its course sharing structure with its neighbour's; undefined when it cannot be read. */
async function readStep(step: SavedStep | undefined, neighbour: Course): Promise<HistoryStep | undefined> {
  // What comes from a store may be damaged.
  if (typeof step?.text !== 'string' || typeof step.label !== 'string' || step.label === '') return undefined;
  const reading = await readCourseText(step.text);
  return reading.kind === 'read' ? { course: sharedWith(reading.course, neighbour), label: step.label } : undefined;
}

/** The steps around the opened one, up to the first on each side that is missing or cannot be read. */
export async function recalledSteps(
  stored: readonly SavedStep[],
  { course, number }: OpenedStep,
  pause: Pause,
): Promise<RecalledSteps> {
  const byNumber = new Map(stored.map((step) => [step.number, step]));
  const readFrom = async (towards: 1 | -1): Promise<readonly HistoryStep[]> => {
    const read: HistoryStep[] = [];
    for (let at = number + towards; byNumber.has(at); at += towards) {
      await pause();
      const step = await readStep(byNumber.get(at), read.at(-1)?.course ?? course);
      if (step === undefined) break;
      read.push(step);
    }
    return read;
  };
  const before = (await readFrom(-1)).toReversed();
  const after = await readFrom(1);
  const label = byNumber.get(number)?.label;
  return { course, before, after, ...(typeof label === 'string' && label !== '' ? { label } : {}) };
}
