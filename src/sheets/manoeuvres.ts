/** What heads an obstacle's column on a card: a few words for each leg, far shorter than its instruction. */
import type { Leg } from '../core/course/course.ts';
import { tradeTitle } from '../core/course/obstacle-title.ts';
import type { PlacedObstacle } from '../core/course/placed.ts';
import { obstacleKind } from '../core/obstacles/obstacles.ts';
import type { Survey } from '../core/survey.ts';
import { capitalized } from '../core/text/sentence.ts';
import { handWork, sideHand } from './handled-words.ts';
import { type Step, stepsOf } from './steps.ts';

interface Manoeuvre {
  readonly leg: string;
  /** In the order of the ride, from 1. */
  readonly number: number;
  /** "Gate, left-hand push", "Lope-overs, left lead". */
  readonly name: string;
}

/** Turns on the spot that are worth a word are at least so large: a half turn, radians. */
const LEAST_TURN = Math.PI - 0.01;

/** "left-hand push" of a kind that says how it is worked, else the hand alone. */
function workWords(obstacle: PlacedObstacle, steps: readonly Step[]): readonly string[] {
  const wording = obstacleKind(obstacle.obstacle.kind)?.words ?? {};
  return steps.flatMap((step, i) => {
    if (step.kind !== 'work') return [];
    const said = handWork(steps, i, { wording });
    const how = /\{\} with an? (\S+-hand \w+)$/.exec(said)?.[1];
    const hand = /on the (left|right)/.exec(said)?.[1];
    return how !== undefined ? [how] : hand === undefined ? [] : [`on the ${hand}`];
  });
}

/** What is done there beside riding forwards, each once, in order. */
function deedWords(title: string, steps: readonly Step[]): readonly string[] {
  const says = (word: RegExp): boolean => word.test(title);
  const deeds = steps.flatMap((step): string[] => {
    if (step.kind === 'side-pass') return [says(/side pass/i) ? sideHand(step) : `side pass ${sideHand(step)}`];
    if (step.kind === 'back') return says(/\bback/i) ? [] : ['back'];
    if (step.kind !== 'turn' || Math.abs(step.by) < LEAST_TURN) return [];
    return [`turn ${Math.round((Math.abs(step.by) * 180) / Math.PI)}° ${step.by > 0 ? 'left' : 'right'}`];
  });
  return [...new Set(deeds)];
}

/** The gait, where nothing but riding is done and the title does not say it; the lead, where the designer chose one. */
function gaitWords(title: string, { gait, lead }: Leg, steps: readonly Step[]): readonly string[] {
  if (steps.length === 0 || steps.some(({ kind }) => kind !== 'ride')) return [];
  if (gait === 'lope' && lead !== undefined) return [`${lead} lead`];
  return title.toLowerCase().includes(gait) ? [] : [gait];
}

function nameOf(survey: Survey, leg: Leg): string {
  const placed = survey.obstacles.find(({ obstacle }) => obstacle.id === leg.obstacle);
  const passage = placed?.obstacle.passages.find(({ id }) => id === leg.passage);
  if (placed === undefined || passage === undefined) return 'Obstacle';
  const title = placed.obstacle.name ?? tradeTitle(placed.obstacle, survey.layout);
  const steps = stepsOf(placed, passage);
  const work = workWords(placed, steps);
  // A gate that is pulled is backed a step: that is in the word.
  const deeds = work.length > 0 ? work : deedWords(title, steps);
  return capitalized([title, ...deeds, ...gaitWords(title, leg, steps)].join(', '));
}

/** The legs of the ride, each with its number and a few words. */
export function manoeuvres(survey: Survey): readonly Manoeuvre[] {
  return survey.layout.ride.legs.map((leg, index) => ({ leg: leg.id, number: index + 1, name: nameOf(survey, leg) }));
}
