/** The pattern in words: one sentence or two for each number of the go, unless the designer wrote their own. */

import type { Leg } from '../core/course/course.ts';
import type { Gait } from '../core/horses/horse.ts';
import type { Passage, Station } from '../core/obstacles/passage.ts';
import type { Survey } from '../core/survey.ts';
import { capitalized } from '../core/text/sentence.ts';

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

function inGait(gait: Gait, leg: Leg): string {
  return gait === 'lope' && leg.lead !== undefined ? `lope on the ${leg.lead} lead` : gait;
}

function degrees(by: number): string {
  return `${Math.round((Math.abs(by) * 180) / Math.PI)}°`;
}

const TURNS: Readonly<Record<string, string>> = {
  'a full turn': '360°',
  'half a turn': '180°',
  'a quarter turn': '90°',
};

/** Which end or side is a designer's word: on a pattern the line shows it. */
const ENDS = /,? (from|at) the (other end|far side)|, facing the other way/g;

/**
 * The passage as it is told on a pattern: turns in degrees with their direction. The end is named only where the
 * obstacle has been ridden before.
 */
function passageWords(passage: Passage, before: boolean): string {
  const turn = passage.stations.find((station) => station.kind === 'turn');
  return passage.title
    .replace(ENDS, (end) => (before ? end : ''))
    .replace(/^ride /, '')
    .replace(/\b(a full turn|half a turn|a quarter turn)( to the)? (left|right)\b/g, (_, turned: string, _to, hand) => {
      return `turn ${TURNS[turned]} to the ${hand}`;
    })
    .replace(/\bturn and back\b/g, (plain) => {
      if (turn === undefined) return plain;
      return `turn ${degrees(turn.by)} to the ${turn.by > 0 ? 'left' : 'right'}, and back`;
    });
}

function isHandled(station: Station): boolean {
  return station.kind === 'reach' ? station.move !== 'ride' : station.kind === 'turn';
}

/** Where the horse is not ridden forwards at once, it stops first. */
function stopsFirst(passage: Passage): boolean {
  const [, second] = passage.stations;
  return second !== undefined && isHandled(second) && !/^(halt|stop)\b/.test(passage.title);
}

/** "the bridge" in "over the bridge", and the same words with "it" in its place. */
function thingNamed(what: string): { readonly thing: string; readonly rest: string } | undefined {
  const found = /\bthe (?!left|right|first|same|other|far)([\w-]+)/.exec(what);
  if (found === null) return undefined;
  const pronoun = found[1]?.endsWith('s') ? 'them' : 'it';
  return { thing: found[0], rest: what.replace(found[0], pronoun) };
}

function legWords(leg: Leg, passage: Passage, before: boolean): string {
  const what = passageWords(passage, before);
  const [first = ''] = what.split(' ');
  const approach = inGait(leg.approach, leg);
  const gait = inGait(leg.gait, leg);
  const name = thingNamed(what);
  const towards = name === undefined ? `${approach} up` : `${approach} to ${name.thing}`;
  const rest = name?.rest ?? what;
  if (WHERE.has(first)) {
    if (leg.approach !== leg.gait) return `${towards}, then ${gait} ${rest}`;
    return CROSSED.has(first) ? `${approach} to and ${what}` : `${approach} ${what}`;
  }
  if (stopsFirst(passage)) return `${towards}, stop${what.startsWith('turn') ? ',' : ' and'} ${rest}`;
  if (passage.stations.some(isHandled)) return `${towards}, ${rest}`;
  return leg.approach === leg.gait ? `at the ${gait}, ${what}` : `${towards}; at the ${gait}, ${rest}`;
}

/** The way to the end, where one is marked and there is a way to go. */
function finish(survey: Survey): string {
  const elements = survey.line.elements.filter(({ part }) => part === 'finish');
  const last = elements.at(-1);
  const length = elements.reduce((sum, element) => sum + element.length, 0);
  return survey.layout.ride.end === undefined || last === undefined || length < 1 ? '' : ` Then ${last.gait} to END.`;
}

/** In the order of the go. */
export function instructions(survey: Survey): readonly Instruction[] {
  const { legs } = survey.layout.ride;
  return legs.map((leg, index) => {
    const number = index + 1;
    if (leg.words !== undefined && leg.words.trim() !== '') return { leg: leg.id, number, text: leg.words.trim() };
    const obstacle = survey.layout.obstacles.find(({ id }) => id === leg.obstacle);
    const passage = obstacle?.passages.find(({ id }) => id === leg.passage);
    if (passage === undefined) return { leg: leg.id, number, text: 'This obstacle is no longer in the course.' };
    const before = legs.slice(0, index).some((other) => other.obstacle === leg.obstacle);
    const way = legWords(leg, passage, before);
    const sentence = index === 0 ? `From START, ${way}.` : `${capitalized(way)}.`;
    return { leg: leg.id, number, text: `${sentence}${index === legs.length - 1 ? finish(survey) : ''}` };
  });
}
