/** The pattern in words: one sentence or two for each number of the go, unless the designer wrote their own. */
import type { Leg } from '../core/course/course.ts';
import type { Gait } from '../core/horses/horse.ts';
import type { Passage, Station } from '../core/obstacles/passage.ts';
import type { Survey } from '../core/survey.ts';

export interface Instruction {
  readonly leg: string;
  readonly number: number;
  readonly text: string;
}

/** A title that begins like this says where to go, and wants the gait before it; others say what to do. */
const TOWARDS = new Set('over through into across round around between along past onto on up down to'.split(' '));

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function inGait(gait: Gait, leg: Leg): string {
  return gait === 'lope' && leg.lead !== undefined ? `lope on the ${leg.lead} lead` : gait;
}

function isHandled(station: Station): boolean {
  return station.kind === 'reach' ? station.move !== 'ride' : station.kind === 'turn';
}

/** "turn 360° to the left" for the turns on the spot that the title does not already tell. */
function turns(passage: Passage): readonly string[] {
  if (/\bturn/i.test(passage.title)) return [];
  return passage.stations.flatMap((station) => {
    if (station.kind !== 'turn') return [];
    const degrees = Math.round((Math.abs(station.by) * 180) / Math.PI);
    return [`turn ${degrees}° to the ${station.by > 0 ? 'left' : 'right'}`];
  });
}

/** Where the horse is not ridden forwards at once, it stops first. */
function stopsFirst(passage: Passage): boolean {
  const [, second] = passage.stations;
  return second !== undefined && isHandled(second);
}

function deed(leg: Leg, passage: Passage): string {
  const goes = TOWARDS.has(passage.title.split(' ')[0]?.toLowerCase() ?? '');
  const approach = inGait(leg.approach, leg);
  const said = turns(passage);
  const after = said.length === 0 ? '' : `, ${said.join(', ')}`;
  if (goes && leg.approach === leg.gait) return `${approach} to and ${passage.title}${after}`;
  if (goes) return `${approach} on, then ${inGait(leg.gait, leg)} ${passage.title}${after}`;
  const halt = stopsFirst(passage) ? ', stop,' : '';
  return `${approach} up${halt} and ${passage.title}${after}`;
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
    const told = deed(leg, passage);
    const sentence = index === 0 ? `From START, ${told}.` : `${capital(told)}.`;
    return { leg: leg.id, number, text: `${sentence}${index === legs.length - 1 ? finish(survey) : ''}` };
  });
}
