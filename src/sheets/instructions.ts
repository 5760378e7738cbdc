/** The pattern in words: one sentence or two for each number of the go, unless the designer wrote their own. */

import type { Lead, Leg } from '../core/course/course.ts';
import type { PlacedObstacle } from '../core/course/placed.ts';
import type { Gait } from '../core/horses/horse.ts';
import type { Passage } from '../core/obstacles/passage.ts';
import type { LineElement } from '../core/ride/line.ts';
import type { Survey } from '../core/survey.ts';
import { capitalized } from '../core/text/sentence.ts';
import { isHandled, passageWords } from './passage-words.ts';

export interface Instruction {
  readonly leg: string;
  readonly number: number;
  readonly text: string;
}

/** A passage's title that begins like this says where to go, and wants the gait before it; others say what to do. */
const WHERE = new Set(
  'over through straight into in across round around between along past onto on up down to'.split(' '),
);
/** Before these, "jog to and over the fan" says more than "jog over the fan". */
const CROSSED = new Set(['over', 'across']);

/** A part of the line, and the gait that is chosen for it. */
interface PartInGait {
  readonly leg: number;
  readonly part: LineElement['part'];
  readonly gait: Gait;
}

/** The lead that the line has on a part at the lope: the chosen one, else that of its bends; null where it is open. */
function leadOn({ line }: Survey, { leg, part, gait }: PartInGait): Lead | null {
  if (gait !== 'lope') return null;
  return line.leads.find((each) => each.leg === leg && each.part === part)?.lead ?? null;
}

function inGait(gait: Gait, lead: Lead | null): string {
  return lead === null ? gait : `lope on the ${lead} lead`;
}

/** A change of lead as the class asks for it. */
function leadChange({ course }: Survey, lead: Lead): string {
  const how = course.class.leadChange;
  return how === undefined ? `change to the ${lead} lead` : `make a ${how} change to the ${lead} lead`;
}

/** Where the horse is not ridden forwards at once, it stops first. */
function stopsFirst(passage: Passage): boolean {
  const [, second] = passage.stations;
  return second !== undefined && isHandled(second) && !/^(halt|stop)\b/.test(passage.title);
}

/** A thing with its article, and with what it is a part of: no side, end or foot of something. */
const NOUN =
  /\bthe (?!left\b|right\b|first\b|same\b|other\b|far\b|forefeet\b|hind\b|(?:left|right) )(?:(?:[\w-]+ )?[\w-]+ of the [\w-]+|raised [\w-]+|[\w-]+)/;

/** "the bridge" in "over the bridge", "the whole bar of the T" in "over the whole bar of the T"; and the rest with "it" in its place. */
function thingNamed(what: string): { readonly thing: string; readonly rest: string } | undefined {
  const found = NOUN.exec(what);
  if (found === null) return undefined;
  const [head = ''] = found[0].split(' of the ');
  const pronoun = head.endsWith('s') ? 'them' : 'it';
  const rest = what.replace(found[0], pronoun);
  return { thing: found[0], rest: rest.replace(/the (left|right) half of it and its/, 'its $1 half and its') };
}

/** The leg by its place in the ride, and how its obstacle is ridden. */
interface RiddenLeg {
  readonly index: number;
  readonly leg: Leg;
  readonly passage: Passage;
  readonly obstacle: PlacedObstacle;
  /** Whether the obstacle has been ridden already. */
  readonly before: boolean;
}

function legWords(survey: Survey, { index, leg, passage, obstacle, before }: RiddenLeg): string {
  const what = passageWords(passage, obstacle, before);
  const [first = ''] = what.split(' ');
  const lead = leadOn(survey, { leg: index, part: 'obstacle', gait: leg.gait });
  // A way too short to have a lead of its own is loped on that of its obstacle.
  const onTheWay = leadOn(survey, { leg: index, part: 'approach', gait: leg.approach }) ?? lead;
  const gait = inGait(leg.gait, lead);
  const approach = inGait(leg.approach, leg.approach === 'lope' ? onTheWay : null);
  const name = thingNamed(what);
  const towards = name === undefined ? `${approach} up` : `${approach} to ${name.thing}`;
  const rest = name?.rest ?? what;
  if (WHERE.has(first)) {
    if (leg.approach !== leg.gait) return `${towards}, then ${gait} ${rest}`;
    if (approach !== gait && lead !== null) return `${towards}, ${leadChange(survey, lead)}, and lope ${rest}`;
    return CROSSED.has(first) ? `${approach} to and ${what}` : `${approach} ${what}`;
  }
  if (stopsFirst(passage)) return `${towards}, stop${what.startsWith('turn') ? ',' : ' and'} ${rest}`;
  if (passage.stations.some(isHandled)) return `${towards}, ${rest}`;
  return approach === gait ? `at the ${gait}, ${what}` : `${towards}; at the ${gait}, ${rest}`;
}

/** The way to the end, where one is marked and there is a way to go. */
function finish(survey: Survey): string {
  const elements = survey.line.elements.filter(({ part }) => part === 'finish');
  const last = elements.at(-1);
  const length = elements.reduce((sum, element) => sum + element.length, 0);
  return survey.layout.ride.end === undefined || last === undefined || length < 1
    ? ''
    : ` Then ${inGait(last.gait, leadOn(survey, last))} to END.`;
}

/** In the order of the go. */
export function instructions(survey: Survey): readonly Instruction[] {
  const { legs } = survey.layout.ride;
  return legs.map((leg, index) => {
    const number = index + 1;
    if (leg.words !== undefined && leg.words.trim() !== '') return { leg: leg.id, number, text: leg.words.trim() };
    const obstacle = survey.obstacles.find((each) => each.obstacle.id === leg.obstacle);
    const passage = obstacle?.obstacle.passages.find(({ id }) => id === leg.passage);
    if (obstacle === undefined || passage === undefined)
      return { leg: leg.id, number, text: 'This obstacle is no longer in the course.' };
    const before = legs.slice(0, index).some((other) => other.obstacle === leg.obstacle);
    const way = legWords(survey, { index, leg, passage, obstacle, before });
    const sentence = index === 0 ? `From START, ${way}.` : `${capitalized(way)}.`;
    return { leg: leg.id, number, text: `${sentence}${index === legs.length - 1 ? finish(survey) : ''}` };
  });
}
