/**
 * What people call the things of a course, in one place, so that the same thing has the same name in every sentence. It knows
 * no rule book: the desk names things before one is there.
 */
import { tradeNoun } from '../../course/obstacle-title.ts';
import type { Gap, LineElement } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import { andList, numberList, uncapitalized } from '../../text/sentence.ts';

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
