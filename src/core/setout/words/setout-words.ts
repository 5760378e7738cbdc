/** A plan of set-out as plain sentences that a crew can follow aloud, in the unit of its tapes. */
import { obstacleWords } from '../../checks/findings/thing-words.ts';
import type { Wall } from '../../constraints/constraint.ts';
import type { PlacedPiece } from '../../course/placed.ts';
import { printLength } from '../../measure/length.ts';
import type { Radians } from '../../measure/quantity.ts';
import { completeValues } from '../../pieces/params.ts';
import { thingParts, thingWords } from '../../pieces/thing-words.ts';
import type { Survey } from '../../survey.ts';
import { andList, counted, uncapitalized } from '../../text/sentence.ts';
import type { GapError, SetOut, SetOutCheck, SetOutPart, SetOutStep, WeakFix } from '../setout.ts';
import { isStraight } from '../tape-errors.ts';
import { observationWords } from './observation-words.ts';
import { namedPiece, namedUnit, type PartNames, partPieceWords, spanWords } from './place-words.ts';
import { isNothing, roundingWords, withinWords } from './reading-words.ts';
import type { ObservationWords } from './told-observation.ts';

/** Stands under every set-out. */
export const SET_OUT_CAUTION =
  'Chock or bed every pole before a horse comes near, keep horses out while poles are carried, and let the show’s officials look over the course before it is ridden.';

/** A check in words. */
export interface CheckWords {
  /** "Check from end A to end D: 12' 4¼", within ½"." */
  readonly says: string;
  readonly measure: string;
  readonly figure?: string;
  /** How far off it may be: "½"". */
  readonly within: string;
}

/** One step in words, in the order in which it is done. */
export interface StepWords {
  /** "Lay pole 2 (12', ends C and D)." */
  readonly lay: string;
  /** Absent: it is measured from walls, and others hold the tape there. */
  readonly hold?: string;
  readonly tapes: readonly ObservationWords[];
  /** How it is turned, where no tape says it. */
  readonly turn?: string;
  /** Risers that are put under its ends. */
  readonly raise: readonly string[];
  /** How it is kept from rolling. */
  readonly secure?: string;
  readonly checks: readonly CheckWords[];
  readonly weak?: string;
  /** What rounding to the tape does to its readings; nothing where it does nothing. */
  readonly rounding: readonly string[];
}

/** The names of a part's things. */
export function partNames(survey: Survey, plan: SetOut, part: SetOutPart): PartNames {
  return { survey, plan, part };
}

/** "the fan (obstacle 3)", "the box (obstacle 4) and the back-through L (obstacle 5)". */
export function partTitle({ survey, part }: PartNames): string {
  return andList(
    part.obstacles.map((id) => {
      const [only, ...more] = survey.pieces.filter(({ obstacle }) => obstacle === id);
      const isNamed = survey.numbers.has(id) || survey.layout.obstacles.some((each) => each.id === id && each.name);
      // What lies alone and is not ridden goes by what it is: "the plant", not "the scenery".
      const isThing = only !== undefined && more.length === 0 && !isNamed;
      return isThing ? `the ${uncapitalized(only.kind.title)}` : obstacleWords(survey, id);
    }),
  );
}

function isLying({ figure }: PlacedPiece): boolean {
  return figure.stands === 'ground';
}

/** "12', plain, ends C and D": what is to be looked for on the truck, and the letters of its ends. */
function traitWords(names: PartNames, key: string): string {
  const { kind, piece } = namedPiece(names, key);
  const { length, traits } = thingParts(kind, piece.values, namedUnit(names), 'unusual');
  const letters = names.part.letters.get(key);
  const ends = letters === undefined ? [] : [`ends ${letters.join(' and ')}`];
  return [...(length === undefined ? [] : [length]), ...traits, ...ends].join(', ');
}

function layWords(names: PartNames, key: string): string {
  const traits = traitWords(names, key);
  const how = isLying(namedPiece(names, key)) ? 'Lay' : 'Set';
  return `${how} ${partPieceWords(names, key)}${traits === '' ? '' : ` (${traits})`}.`;
}

const NAILED = 'on a nail or under a weight';

/** What stays, and who keeps the tape there. */
function holdWords(names: PartNames, { held, observations }: SetOutStep): string | undefined {
  const isAlone = names.plan.crew.people === 1;
  const pieces = held.filter((each) => !isWall(each));
  const isTaped = observations.some((each) => !isNothing(each));
  if (pieces.length === 0) {
    return isAlone && isTaped ? `Zero end at the wall, ${NAILED}.` : undefined;
  }
  const stays = andList(pieces.map((key) => partPieceWords(names, key)));
  return isAlone && isTaped ? `Hold ${stays}, the zero end ${NAILED}.` : `Hold ${stays}.`;
}

/** Walls stand among what is held as `wall south`. */
function isWall(held: string): held is `wall ${Wall}` {
  return held.startsWith('wall ');
}

/** "Put a 6" riser under end C of pole 2.": one sentence for each height. */
function raiseWords(names: PartNames, key: string): readonly string[] {
  const { kind, piece } = namedPiece(names, key);
  const unit = namedUnit(names);
  const fittings = kind.handling?.fittings?.(completeValues(kind.params, piece.values)) ?? [];
  const [a, b] = names.part.letters.get(key) ?? ['', ''];
  const heights = [...new Set(fittings.map(({ height }) => withinWords(height, unit)))];
  return heights.map((height) => {
    const under = fittings.filter((each) => withinWords(each.height, unit) === height);
    const ends = under.map(({ end }) => (end === 'start' ? a : b));
    const thing = partPieceWords(names, key);
    return ends.length === 1
      ? `Put a ${height} riser under end ${ends[0]} of ${thing}.`
      : `Put ${height} risers under ends ${andList(ends)} of ${thing}.`;
  });
}

/** Common practice, no source: a touch must not move it, and what rolls is chocked. */
function secureWords(names: PartNames, key: string): string | undefined {
  const piece = namedPiece(names, key);
  if (!isLying(piece)) return undefined;
  const thing = partPieceWords(names, key);
  return rolls(piece)
    ? `Chock ${thing} on both sides so that it cannot roll, then tape once more.`
    : raiseWords(names, key).length > 0
      ? `See that ${thing} rests in its risers, then tape once more.`
      : `Bed ${thing} so that a touch does not move it, then tape once more.`;
}

/** Whether a piece rolls when it is touched. */
export function rolls({ kind, piece }: PlacedPiece): boolean {
  return kind.handling?.rolls?.(completeValues(kind.params, piece.values)) === true;
}

function checkWords(names: PartNames, check: SetOutCheck, laid: string): CheckWords {
  const { measure, figure } = observationWords(names, check, laid);
  const unit = namedUnit(names);
  const { length } = namedPiece(names, laid).figure;
  // Square is looked at where it shows: at the far end of the piece.
  const within = withinWords(check.kind === 'square' ? check.tolerance * length : check.tolerance, unit);
  const isPlace = !measure.startsWith('how far');
  const told = figure === undefined ? `that ${measure}` : `${isPlace ? `from ${measure}` : measure}: ${figure}`;
  const where = check.kind === 'square' ? ' at its far end' : '';
  return {
    says: `Check ${told}, within ${within}${where}.`,
    measure,
    within: `${within}${where}`,
    ...(figure && { figure }),
  };
}

function wholeDegrees(angle: Radians): string {
  return `${Math.round((angle * 180) / Math.PI)}°`;
}

function betterWords(names: PartNames, { better }: WeakFix, piece: string): string {
  if (better === undefined)
    return 'Nothing near holds it better: prove it by the checks before the next piece is laid.';
  const { measure, figure } = observationWords(names, better, piece);
  return `Better: see as well that ${measure}${figure === undefined ? '' : ` is ${figure}`}, before the next piece is laid.`;
}

/** A step in words. */
export function stepWords(names: PartNames, step: SetOutStep): StepWords {
  const { piece, observations, checks, weak } = step;
  const hold = holdWords(names, step);
  const secure = secureWords(names, piece);
  const turned = step.turnedByEye && !isRound(names, piece);
  const thing = partPieceWords(names, piece);
  return {
    lay: layWords(names, piece),
    ...(hold !== undefined && { hold }),
    tapes: observations.map((each) => observationWords(names, each, piece)),
    ...(turned && { turn: `Turn ${thing} by eye as the drawing has it.` }),
    raise: raiseWords(names, piece),
    ...(secure !== undefined && { secure }),
    checks: checks.map((each) => checkWords(names, each, piece)),
    ...(weak !== undefined && {
      weak: `Weak fix: the tapes meet at ${wholeDegrees(weak.angle)} only, so a small error moves ${thing} far. ${betterWords(names, weak, piece)}`,
    }),
    rounding: [...observations, ...checks].flatMap((each) => roundingWords(each, namedUnit(names)) ?? []),
  };
}

/** Whether turning it on its spot shows nothing. */
function isRound(names: PartNames, key: string): boolean {
  const { kind } = namedPiece(names, key);
  return kind.extent === 'small' && kind.handling?.alike === 'any-turn';
}

/** The whole step, sentence by sentence, to be read aloud. */
export function stepSentences(names: PartNames, step: SetOutStep): readonly string[] {
  const { lay, hold, tapes, turn, raise, secure, checks, weak } = stepWords(names, step);
  const told = [
    lay,
    hold,
    ...tapes.map(({ says }) => says),
    turn,
    ...raise,
    secure,
    ...checks.map(({ says }) => says),
    weak,
  ];
  return told.filter((each) => each !== undefined);
}

/** Where a gap is taped: "pole 1 to pole 2, inside to inside, 4' 0" in from ends B and D". */
export function gapPlaceWords(names: PartNames, { keys, at }: GapError): string {
  const [from, to] = keys.map((piece, i) => ({ piece, at: at[i] ?? 0.5 }));
  if (from === undefined || to === undefined) throw new Error('set-out: a gap is between two pieces');
  return spanWords(names, from, to);
}

/** Things counted by what they are: "4 × 12' pole, round, a band every 2 ft". Also the risers, by height. */
export function thingCounts(names: PartNames, keys: readonly string[]): readonly string[] {
  const unit = namedUnit(names);
  const counts = new Map<string, number>();
  const count = (words: string) => counts.set(words, (counts.get(words) ?? 0) + 1);
  const pieces = keys.map((key) => namedPiece(names, key));
  for (const { kind, piece } of pieces)
    count(thingWords(kind, piece.values, unit, isSmallKind(kind) ? 'unusual' : 'choices'));
  for (const { kind, piece } of pieces) {
    for (const { height } of kind.handling?.fittings?.(completeValues(kind.params, piece.values)) ?? []) {
      count(`${withinWords(height, unit)} riser`);
    }
  }
  return [...counts].map(([words, number]) => `${number} × ${words}`);
}

function isSmallKind(kind: PlacedPiece['kind']): boolean {
  return kind.extent === 'small';
}

/** Whether two straight tapes meet in a step. */
function twoStraights({ observations }: SetOutStep): boolean {
  return observations.filter(({ kind }) => isStraight(kind)).length > 1;
}

/** What a crew takes with it, beside what is laid: one sentence a tool. */
export function toolWords(survey: Survey, plan: SetOut): readonly string[] {
  const { crew, parts } = plan;
  const steps = parts.flatMap((part) => part.steps);
  const kinds = new Set(
    steps.flatMap(({ observations, checks }) => [...observations, ...checks].map(({ kind }) => kind)),
  );
  const keys = new Set(steps.map(({ piece }) => piece));
  const chocked = survey.pieces.filter((piece) => keys.has(piece.key) && rolls(piece)).length;
  const marked = crew.marked === 'ft' ? 'feet and inches' : 'metres';
  const length = printLength(crew.tape, crew.marked);
  const square =
    crew.rightAngle === 'board' ? 'A board with a right angle.' : 'Nothing for right angles: they are made by 3-4-5.';
  return [
    `${counted(crew.tapes, 'tape')} of ${length} or more, marked in ${marked}.`,
    ...(kinds.has('square') ? [square] : []),
    ...(kinds.has('along-wall') || kinds.has('from-rail') ? ['Chalk or tent pegs for the marks along the walls.'] : []),
    ...(crew.tapes === 1 && steps.some(twoStraights)
      ? ['A stick: where two tapes meet, scratch the arc of the first into the ground.']
      : []),
    ...(crew.people === 1 ? ['A nail and a weight for the zero end of the tape.'] : []),
    ...(chocked > 0 ? [`${2 * chocked} chocks, two for each round pole.`] : []),
  ];
}
