/** Draws sheets away from the page, which stays quick meanwhile: a set-out takes seconds. Questions and answers are plain data. */
import type { Course } from '../../core/course/course.ts';
import { sharedWith } from '../../core/course/shared-structure.ts';
import { type DrawingTold, drawingTold, type SheetQuestion } from './drawn-sheet.ts';

/** What a worker's global scope has of use here; the page's types do not know it. */
interface WorkerScope {
  addEventListener(kind: 'message', listener: (event: MessageEvent<SheetQuestion>) => void): void;
  postMessage(message: DrawingTold): void;
}

const scope = globalThis as unknown as WorkerScope;
/** The course that was drawn last: what the next one has in common with it is not worked out again. */
let last: Course | undefined;

scope.addEventListener('message', ({ data: question }) => {
  last = sharedWith(question.course, last);
  scope.postMessage(drawingTold({ ...question, course: last }));
});
