import type { Lead } from '../../core/course/course.ts';
import type { Seconds } from '../../core/measure/quantity.ts';
import type { Line, LineElement } from '../../core/ride/line.ts';
import { ridePositionAt } from '../../core/ride/playing.ts';
import type { Survey } from '../../core/survey.ts';
import { rideWords } from '../../words/ride.ts';
import { obstacleTitle } from '../app-words.ts';
import { TRAVEL_STYLES, travelKind } from '../arena/painters/travel-styles.ts';

/** On which lead the horse lopes there; null where it does not lope or is on no lead. */
export function leadAt(line: Line, element: LineElement, at: number): Lead | null {
  if (element.move !== 'ride' || element.gait !== 'lope') return null;
  return line.leads.find((each) => each.from <= at + 1e-9 && at <= each.to + 1e-9)?.lead ?? null;
}

/** What the horse does at a moment, in words. */
export interface Moment {
  /** "Lope, left lead". */
  readonly going: string;
  /** "to number 3, Fan", "over number 3, Fan", "to the end". */
  readonly where: string;
}

export function momentAt(survey: Survey, time: Seconds): Moment | undefined {
  const { line, layout } = survey;
  const riding = ridePositionAt(line, time);
  if (riding === undefined) return undefined;
  const { element, at } = riding;
  const lead = leadAt(line, element, at);
  const way = TRAVEL_STYLES[travelKind(element)].word;
  const going = lead === null ? way : rideWords.gaitOnLead(way, lead);
  if (element.part === 'finish') return { going, where: rideWords.toTheEnd };
  const id = layout.ride.legs[element.leg]?.obstacle;
  const obstacle = layout.obstacles.find((each) => each.id === id);
  const title = obstacle === undefined ? '' : `, ${obstacleTitle(obstacle, layout)}`;
  const where = element.part === 'approach' ? rideWords.toNumber : rideWords.atNumber;
  return { going, where: where(element.leg + 1, title) };
}
