import { useEffect, useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import { type Course, currentLayout, type Level } from '../../core/course/course.ts';
import { type Survey, survey } from '../../core/survey.ts';
import { STARTERS, type Starter } from '../file/starters.ts';

/** A starter that was read; its survey, from which its picture is drawn, is worked out when the page is at rest. */
export interface StarterCourse {
  readonly name: string;
  readonly course: Course;
  readonly survey: Survey | undefined;
}

/** What is known so far, by name. It is kept as long as the page is open; null: the file cannot be read. */
const store = createStore<ReadonlyMap<string, StarterCourse | null>>()(() => new Map());
const asked = new Set<string>();
const unsurveyed: StarterCourse[] = [];

function know(name: string, starter: StarterCourse | null): void {
  store.setState(new Map(store.getState()).set(name, starter), true);
}

/** One survey at a time, so that the page answers between two. */
function surveyNext(): void {
  const next = unsurveyed.shift();
  if (next === undefined) return;
  know(next.name, { ...next, survey: survey(next.course) });
  if (unsurveyed.length > 0) atRest(surveyNext);
}

function atRest(run: () => void): void {
  if (typeof requestIdleCallback === 'function') requestIdleCallback(run, { timeout: 1000 });
  else setTimeout(run, 50);
}

async function read({ name, read: readStarter }: Starter): Promise<void> {
  if (asked.has(name)) return;
  asked.add(name);
  const reading = await readStarter().catch(() => undefined);
  if (reading?.kind !== 'read') {
    know(name, null);
    return;
  }
  const starter = { name, course: reading.course, survey: undefined };
  know(name, starter);
  if (unsurveyed.push(starter) === 1) atRest(surveyNext);
}

/** Starters by name, as far as they are read. All are read when somebody first looks at one. */
export function useStarterCourses(names: readonly string[]): ReadonlyMap<string, StarterCourse | null> {
  useEffect(() => {
    for (const starter of STARTERS) if (names.includes(starter.name)) void read(starter);
  }, [names]);
  return useSyncExternalStore(store.subscribe, store.getState);
}

/** From the easiest class to the hardest. */
const LEVELS: readonly Level[] = ['led', 'walk-jog', 'novice', 'youth', 'amateur', 'open'];

/** The easiest level first, then the smaller course; one layout before several; what cannot be read comes last. */
export function easiestFirst(a: StarterCourse | null | undefined, b: StarterCourse | null | undefined): number {
  if (!a || !b) return Number(!a) - Number(!b);
  const rank = ({ course }: StarterCourse) => [
    LEVELS.indexOf(course.class.level),
    course.layouts.length > 2 ? 1 : 0,
    currentLayout(course).obstacles.length,
    course.arena.length * course.arena.width,
  ];
  const [mine, its] = [rank(a), rank(b)];
  const place = mine.findIndex((value, index) => value !== its[index]);
  return place < 0 ? a.name.localeCompare(b.name) : (mine[place] ?? 0) - (its[place] ?? 0);
}
