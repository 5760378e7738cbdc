/** The pattern in words: one sentence or two for each number of the go, unless the designer wrote their own. */

import type { Lead, Leg } from '../core/course/course.ts';
import type { Gait } from '../core/horses/horse.ts';
import type { LineElement } from '../core/ride/line.ts';
import type { Survey } from '../core/survey.ts';
import { capitalized } from '../core/text/sentence.ts';
import { type PassageWords, passageWords } from './passage-words.ts';

export interface Instruction {
  readonly leg: string;
  readonly number: number;
  readonly text: string;
}

/** Before these, "jog to and over the fan" says more than "jog over the fan". */
const CROSSED = /^(over|across) /;

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

/** The leads of the way to an obstacle, in order, each named once until it changes. */
function leadsOnTheWay({ line }: Survey, leg: number): readonly Lead[] {
  const from = line.elements.find((each) => each.leg === leg && each.part === 'obstacle')?.from ?? line.length;
  const leads = line.leads.filter((each) => each.leg === leg && each.part === 'approach' && each.from < from);
  return leads.flatMap(({ lead }) => lead ?? []).filter((lead, i, all) => lead !== all[i - 1]);
}

function inGait(gait: Gait, lead: Lead | null): string {
  return lead === null ? gait : `lope on the ${lead} lead`;
}

/** A change of lead as the class asks for it. */
function leadChange({ course }: Survey, lead: Lead): string {
  const how = course.class.leadChange;
  return how === undefined ? `change to the ${lead} lead` : `make a ${how} change to the ${lead} lead`;
}

/** The leg by its place in the ride, and what is said of its way. */
interface RiddenLeg {
  readonly index: number;
  readonly leg: Leg;
  readonly words: PassageWords;
}

/** "a, b, and c". */
function stepList(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')}, and ${parts.at(-1)}`;
}

function legWords(survey: Survey, { index, leg, words }: RiddenLeg): string {
  const { thing, pronoun, where } = words;
  const lead = leadOn(survey, { leg: index, part: 'obstacle', gait: leg.gait });
  // A way too short to have a lead of its own is loped on that of its obstacle.
  const [onTheWay = lead, ...others] = leg.approach === 'lope' ? leadsOnTheWay(survey, index) : [];
  const gait = inGait(leg.gait, lead);
  const approach = inGait(leg.approach, leg.approach === 'lope' ? onTheWay : null);
  const isOther = leg.approach === 'lope' && lead !== null && lead !== (others.at(-1) ?? onTheWay);
  const changes = [...others, ...(isOther ? [lead] : [])].map((each) => leadChange(survey, each));
  const towards = `${approach} to ${thing}`;
  const named = (text: string) => text.replaceAll('{}', pronoun);
  const then = [...(words.stops ? ['stop'] : []), ...words.deeds].map(named);
  const way = [towards, ...changes];
  if (where === undefined) return words.stops ? stepList([...way, ...then]) : [...way, ...then].join(', ');
  if (leg.approach !== leg.gait) return stepList([`${way.join(', ')}, then ${gait} ${named(where)}`, ...then]);
  if (changes.length > 0) return stepList([`${way.join(', ')}, and lope ${named(where)}`, ...then]);
  const isNamed = where.includes('{}');
  const onwards = `${isNamed ? (CROSSED.test(where) ? 'to and ' : '') : `to ${thing} and `}${where.replaceAll('{}', thing)}`;
  return stepList([`${approach} ${onwards}`, ...then]);
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

/** What the course says of a leg, by its place in the go. */
function madeWords(survey: Survey, index: number, leg: Leg): string {
  const { legs } = survey.layout.ride;
  const obstacle = survey.obstacles.find((each) => each.obstacle.id === leg.obstacle);
  const passage = obstacle?.obstacle.passages.find(({ id }) => id === leg.passage);
  if (obstacle === undefined || passage === undefined) return 'This obstacle is no longer in the course.';
  const before = legs.slice(0, index).flatMap((other) => {
    if (other.obstacle !== leg.obstacle) return [];
    return obstacle.obstacle.passages.filter(({ id }) => id === other.passage);
  });
  const crossings = survey.line.crossings.filter((crossing) => crossing.leg === index);
  const wheelbase = survey.horse.wheelbase.value;
  const { letters } = survey;
  const words = passageWords(passage, { obstacle, gait: leg.gait, wheelbase, letters, crossings, before });
  if (words === undefined) return 'This obstacle has lost the pieces of its way.';
  const way = legWords(survey, { index, leg, words });
  const sentence = index === 0 ? `From START, ${way}.` : `${capitalized(way)}.`;
  return `${sentence}${index === legs.length - 1 ? finish(survey) : ''}`;
}

/** What the course says itself, in the order of the go. */
export function madeInstructions(survey: Survey): readonly Instruction[] {
  return survey.layout.ride.legs.map((leg, index) => {
    return { leg: leg.id, number: index + 1, text: madeWords(survey, index, leg) };
  });
}

/** As they are posted, in the order of the go. */
export function instructions(survey: Survey): readonly Instruction[] {
  return survey.layout.ride.legs.map((leg, index) => {
    const own = leg.words?.trim() ?? '';
    return { leg: leg.id, number: index + 1, text: own === '' ? madeWords(survey, index, leg) : own };
  });
}
