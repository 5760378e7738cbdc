import { tradeNoun } from '../../course/obstacle-title.ts';
import { printAngle } from '../../measure/angle.ts';
import { printDuration } from '../../measure/duration.ts';
import { printLength } from '../../measure/length.ts';
import type { LengthUnit } from '../../measure/quantity.ts';
import type { Gap, LineElement } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import { andList, numberList, uncapitalized } from '../../text/sentence.ts';
import type { Band, Limit, Quantity } from '../check.ts';
import { bandOf, isPractice } from '../rulebooks/rulebooks.ts';

/** The words of findings, in one place, so that the same thing has the same name in every sentence. */

/** A value of the given quantity, SI, as a person in the course's unit says it. */
export function valueWords(quantity: Quantity, value: number, unit: LengthUnit): string {
  switch (quantity) {
    case 'length':
      return printLength(value, unit);
    case 'angle':
      return printAngle(value);
    case 'time':
      return printDuration(value);
    case 'count':
      return String(value);
  }
}

function quantityOf(limit: Limit): Quantity {
  if (limit.unit === 'count') return 'count';
  if (limit.unit === 'degree') return 'angle';
  return limit.unit === 's' ? 'time' : 'length';
}

/** A book printed in the other system is quoted in its own unit: a rounded value would look like the rule. */
function ownUnitWords(limit: Limit, unit: LengthUnit): string {
  const metric = limit.unit === 'cm' || limit.unit === 'm';
  const imperial = limit.unit === 'in' || limit.unit === 'ft';
  if (limit.house !== undefined || (unit === 'ft' ? !metric : !imperial)) return '';
  const ends = [limit.least, limit.most].filter((end) => end !== undefined);
  return ` (${ends.join(' to ')} ${limit.unit} in the book)`;
}

/** "3' to 3' 6" or a whole multiple", "at least 2' 6"", "at most 10°". */
export function bandWords(limit: Limit, unit: LengthUnit): string {
  const { least, most, multiples }: Band = bandOf(limit);
  const print = (value: number): string => valueWords(quantityOf(limit), value, unit);
  const own = ownUnitWords(limit, unit);
  if (least !== undefined && most !== undefined) {
    const ends = least === most ? print(least) : `${print(least)} to ${print(most)}`;
    return `${ends}${own}${multiples ? ' or a whole multiple' : ''}`;
  }
  if (least !== undefined) return `at least ${print(least)}${own}`;
  return `at most ${print(most ?? 0)}${own}`;
}

/** The measured value; printed more finely where rounding would make it look like the limit that it misses. */
export function measuredWords(limit: Limit, value: number, unit: LengthUnit): string {
  const quantity = quantityOf(limit);
  const printed = valueWords(quantity, value, unit);
  if (quantity !== 'length') return printed;
  const { least, most } = bandOf(limit);
  if (least !== undefined && value < least && printed === printLength(least, unit)) return `just under ${printed}`;
  if (most !== undefined && value > most && printed === printLength(most, unit)) return `just over ${printed}`;
  return printed;
}

/** What of a survey names things: a layout whose line nobody has asked for has it too. */
export type LayoutNames = Pick<Survey, 'layout' | 'pieces' | 'numbers'>;

/** "the fan (obstacle 3)": the designer's own name where there is one, the number where it is ridden. */
export function obstacleWords(survey: LayoutNames, id: string): string {
  const obstacle = survey.layout.obstacles.find((each) => each.id === id);
  if (obstacle === undefined) return id;
  const numbers = survey.numbers.get(id) ?? [];
  const name = obstacle.name ?? `the ${tradeNoun(obstacle, survey.layout)}`;
  return numbers.length === 0 ? name : `${name} (obstacle ${numbers.join(' and ')})`;
}

/** "pole 2 of the fan (obstacle 3)"; a thing that lies alone goes by its obstacle's name. */
export function pieceWords(survey: LayoutNames, key: string): string {
  const piece = survey.pieces.find((each) => each.key === key);
  if (piece === undefined) return key;
  const owner = obstacleWords(survey, piece.obstacle);
  const siblings = survey.pieces.filter((each) => each.obstacle === piece.obstacle && each.kind === piece.kind);
  const kind = uncapitalized(piece.kind.title);
  if (siblings.length > 1) return `${kind} ${siblings.indexOf(piece) + 1} of ${owner}`;
  const alone = survey.pieces.filter((each) => each.obstacle === piece.obstacle).length === 1;
  return alone ? owner : `the ${kind} of ${owner}`;
}

/** "poles 1 to 4 of the fan (obstacle 3)": several pieces of one kind in one obstacle; else one after the other. */
export function piecesWords(survey: LayoutNames, keys: readonly string[]): string {
  const pieces = survey.pieces.filter(({ key }) => keys.includes(key));
  const [first] = pieces;
  const isOneKind = pieces.every(({ obstacle, kind }) => obstacle === first?.obstacle && kind === first.kind);
  if (first === undefined || pieces.length < 2 || !isOneKind) {
    return andList(keys.map((key) => pieceWords(survey, key)));
  }
  const siblings = survey.pieces.filter((each) => each.obstacle === first.obstacle && each.kind === first.kind);
  const numbers = pieces.map((piece) => siblings.indexOf(piece) + 1);
  return `${uncapitalized(first.kind.title)}s ${numberList(numbers)} of ${obstacleWords(survey, first.obstacle)}`;
}

/** Whose limit it is: the book's, the show's or practice's. */
export function askerWords(limit: Limit): string {
  if (limit.house !== undefined) return 'the house rule asks for';
  return isPractice(limit) || limit.grade === 'E' ? 'good practice asks for' : 'the book asks for';
}

const LINE_PARTS = { approach: 'The way to', obstacle: 'The line through', finish: 'The way out after' } as const;

/** "The way to the bridge (obstacle 4)": a part of the line, to begin a sentence with. */
export function linePartWords(survey: Survey, part: LineElement['part'], obstacle: string): string {
  return `${LINE_PARTS[part]} ${obstacleWords(survey, obstacle)}`;
}

/** The gap's number within its leg, 1 first. */
export function gapNumber(survey: Survey, gap: Gap): number {
  return survey.line.gaps.filter((each) => each.leg === gap.leg).indexOf(gap) + 1;
}

/** "Gap 2 of the fan (obstacle 1)", "Gaps 1 to 3 of …". */
export function gapWords(survey: Survey, gaps: readonly Gap[]): string {
  const numbers = gaps.map((gap) => gapNumber(survey, gap));
  const [first] = gaps;
  return `${gaps.length === 1 ? 'Gap' : 'Gaps'} ${numberList(numbers)} of ${obstacleWords(survey, first?.obstacle ?? '')}`;
}
