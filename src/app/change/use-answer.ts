import { useEffect, useState } from 'react';
import type { AnswerTo, Question } from './plan-questions.ts';
import type { Asked, Told } from './planning-worker.ts';

/** Asks in the order of the questions, one at a time; what was asked and is not wanted any more is dropped. */
interface Planner {
  ask(question: Question, tell: (told: Told) => void): () => void;
}

function createPlanner(): Planner {
  let worker: Worker | undefined;
  let count = 0;
  let running: number | undefined;
  const waiting: { readonly asked: Asked; readonly tell: (told: Told) => void }[] = [];
  const tells = new Map<number, (told: Told) => void>();

  function next(): void {
    if (running !== undefined) return;
    const first = waiting.shift();
    if (first === undefined) return;
    running = first.asked.number;
    tells.set(running, first.tell);
    started().postMessage(first.asked);
  }
  function finished(told: Told): void {
    running = undefined;
    tells.get(told.number)?.(told);
    tells.delete(told.number);
    next();
  }
  function started(): Worker {
    if (worker !== undefined) return worker;
    const made = new Worker(new URL('./planning-worker.ts', import.meta.url), { type: 'module' });
    made.addEventListener('message', ({ data }: MessageEvent<Told>) => finished(data));
    made.addEventListener('error', ({ message }) => {
      worker = undefined;
      if (running !== undefined) finished({ number: running, failure: message });
    });
    worker = made;
    return made;
  }
  return {
    ask(question, tell) {
      count += 1;
      const number = count;
      waiting.push({ asked: { number, question }, tell });
      next();
      return () => {
        const at = waiting.findIndex(({ asked }) => asked.number === number);
        if (at >= 0) waiting.splice(at, 1);
        tells.delete(number);
      };
    },
  };
}

const planner = createPlanner();

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
    if (typeof Worker === 'undefined') {
      let isWanted = true;
      // On the page, then; what it takes to answer is loaded only here.
      void import('./plan-questions.ts').then(({ answered }) => {
        if (isWanted) tell({ number: 0, answer: answered(question) });
      });
      return () => {
        isWanted = false;
      };
    }
    return planner.ask(question, tell);
  }, [question]);
  const { answer, failure, last } = state;
  return { answer, failure, isBusy: question !== null && last !== question };
}
