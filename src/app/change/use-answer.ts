import { useEffect, useState } from 'react';
import type { AnswerTo, Question } from './plan-questions.ts';
import type { Told } from './planning-worker.ts';

/** A question, and who wants the answer; nobody any more where `tell` is undefined. */
interface Job {
  readonly question: Question;
  tell: ((told: Told) => void) | undefined;
}

/**
 * Asks in the order of the questions, one at a time; what was asked and is not wanted any more is dropped. The same question
 * object is answered once.
 */
interface Planner {
  ask(question: Question, tell: (told: Told) => void): () => void;
  /** Starts the worker, so that it is there where later there is no connection. */
  start(): void;
}

function createPlanner(): Planner {
  let worker: Worker | undefined;
  let running: Job | undefined;
  const waiting: Job[] = [];
  const answers = new WeakMap<Question, Told>();

  function next(): void {
    if (running !== undefined) return;
    const job = waiting.shift();
    if (job === undefined) return;
    running = job;
    const told = answers.get(job.question);
    if (told === undefined) started().postMessage(job.question);
    else finished(told);
  }
  function finished(told: Told): void {
    const job = running;
    running = undefined;
    if (job !== undefined) {
      if ('answer' in told) answers.set(job.question, told);
      job.tell?.(told);
    }
    next();
  }
  function started(): Worker {
    if (worker !== undefined) return worker;
    const made = new Worker(new URL('./planning-worker.ts', import.meta.url), { type: 'module' });
    made.addEventListener('message', ({ data }: MessageEvent<Told>) => finished(data));
    made.addEventListener('error', ({ message }) => {
      made.terminate();
      worker = undefined;
      finished({ failure: message });
    });
    worker = made;
    return made;
  }
  return {
    start: () => void started(),
    ask(question, tell) {
      const job: Job = { question, tell };
      waiting.push(job);
      next();
      return () => {
        job.tell = undefined;
        const at = waiting.indexOf(job);
        if (at >= 0) waiting.splice(at, 1);
      };
    },
  };
}

const planner = createPlanner();

export const startPlanner = planner.start;

/** What is known of a question: the last answer, which stays on the screen while a newer one is worked out. */
export interface Answered<Q extends Question> {
  /** The answer with the question that it answers. */
  readonly answer: { readonly of: Q; readonly told: AnswerTo<Q> } | null;
  readonly isBusy: boolean;
  readonly failure: string | null;
}

/** The answer to a question, worked out in the background. The question must be the same object while nothing changes. */
export function useAnswer<Q extends Question>(question: Q | null): Answered<Q> {
  const [state, setState] = useState<Omit<Answered<Q>, 'isBusy'> & { readonly last: Q | null }>({
    answer: null,
    failure: null,
    last: null,
  });
  useEffect(() => {
    if (question === null) return;
    const tell = (told: Told): void => {
      if ('failure' in told) setState((before) => ({ ...before, failure: told.failure, last: question }));
      // The planner answers with what the question's kind asks for.
      else setState({ answer: { of: question, told: told.answer as AnswerTo<Q> }, failure: null, last: question });
    };
    return planner.ask(question, tell);
  }, [question]);
  const { answer, failure, last } = state;
  return { answer, failure, isBusy: question !== null && last !== question };
}
