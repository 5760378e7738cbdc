/**
 * Works out plans away from the page, which stays quick meanwhile: crews' walks and orders of classes take longer than a
 * frame. Questions and answers are plain data.
 */
import type { Course } from '../../core/course/course.ts';
import { sharedWith } from '../../core/course/shared-structure.ts';
import { answered, type Question } from './plan-questions.ts';

/** What a worker's global scope has of use here; the page's types do not know it. */
interface WorkerScope {
  addEventListener(kind: 'message', listener: (event: MessageEvent<Question>) => void): void;
  postMessage(message: Told): void;
}

export type Told = { readonly answer: ReturnType<typeof answered> } | { readonly failure: string };

const scope = globalThis as unknown as WorkerScope;
/** The course that was asked about last: what the next one has in common with it is not worked out again. */
let last: Course | undefined;

scope.addEventListener('message', ({ data: question }) => {
  try {
    last = sharedWith(question.course, last);
    scope.postMessage({ answer: answered({ ...question, course: last }) });
  } catch (failure) {
    scope.postMessage({ failure: failure instanceof Error ? failure.message : String(failure) });
  }
});
