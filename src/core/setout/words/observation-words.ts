import type { ObservationKind } from '../../constraints/constraint.ts';
import { capitalized } from '../../text/sentence.ts';
import { isSmall } from '../observables.ts';
import type { Observation } from '../setout.ts';
import { namedPiece, namedUnit, type PartNames, pairWords, spanWords } from './place-words.ts';
import { angleWords, isNothing, readingWords } from './reading-words.ts';
import { triangleWords } from './right-angle-words.ts';
import {
  endsOf,
  fractionOf,
  heldFirst,
  noun,
  type ObservationWords,
  pieceOf,
  place,
  pointWords,
  type ToldObservation,
  thing,
  withoutSign,
} from './told-observation.ts';
import { alongWall, fromRail, offWall } from './wall-words.ts';

function gap(told: ToldObservation): ObservationWords {
  const measure = spanWords(told.names, ...heldFirst(told));
  return { says: `Tape ${told.figure} from ${measure}.`, measure, figure: told.figure };
}

function between(told: ToldObservation): ObservationWords {
  const [from, to] = heldFirst(told);
  const measure = `${place(told, from)} to ${place(told, to)}`;
  return { says: `Tape ${told.figure} straight from ${measure}.`, measure, figure: told.figure };
}

/** A thing whose middle is nearer to the line of a pole than this is in line with it, metres. */
const ON_LINE = 0.005;

/** From the side of the long piece to the small one, or back, as the tape runs from what is held. */
function beside(told: ToldObservation): ObservationWords {
  const [small, long] = told.of.grips;
  const [thick, wide] = [long, small].map((grip) => namedPiece(told.names, pieceOf(grip)).figure.width);
  const isOnLine = Math.abs(told.of.reading + ((thick ?? 0) + (wide ?? 0)) / 2) < ON_LINE;
  if (isOnLine)
    return inLine({
      ...told,
      of: { ...told.of, grips: [long, small], kind: 'in-line', reading: 0 },
      laid: told.laid === 0 ? 1 : 0,
    });
  const ends = [`the side of ${thing(told, long)}`, `the edge of ${thing(told, small)}`];
  const measure = `${(told.laid === 0 ? ends : ends.toReversed()).join(' to ')}, square to the ${noun(told, long)}`;
  return { says: `Tape ${told.figure} from ${measure}.`, measure, figure: told.figure };
}

function clear(told: ToldObservation): ObservationWords {
  const [small, long] = told.of.grips;
  const at = { piece: pieceOf(long), at: fractionOf(long) <= 0.5 ? 0 : 1 };
  const ends = [`the edge of ${thing(told, small)}`, place(told, at)];
  const measure = `${(told.laid === 1 ? ends : ends.toReversed()).join(' to ')}, along ${thing(told, long)}`;
  return { says: `Tape ${told.figure} from ${measure}.`, measure, figure: told.figure };
}

function ahead(told: ToldObservation): ObservationWords {
  const [long, other] = told.of.grips;
  if (isNothing(told.of)) {
    const [held, laid] = heldFirst(told).map((grip) => pointWords(told, grip));
    return {
      says: `Bring ${laid} square across from ${held}.`,
      measure: `${laid} is square across from ${held}`,
    };
  }
  const { length } = namedPiece(told.names, pieceOf(long)).figure;
  const { reading } = told.of;
  const figure = withoutSign(told.figure);
  const reached = fractionOf(long) * length + reading;
  const end = `end ${endsOf(told, long)[reading < 0 ? 0 : 1]}`;
  const isPast = reached < 0 || reached > length;
  const start = place(told, long);
  const along = `along the line of ${thing(told, long)}`;
  const past = start === end ? `from ${end} out ${along}` : `from ${start} past ${end}, ${along}`;
  const run = isPast ? past : `from ${start} towards ${end}`;
  const point = pointWords(told, other);
  const says =
    told.laid === 1
      ? `Tape ${figure} ${run}: ${point} is square across from there.`
      : `Shift ${thing(told, long)} lengthwise until the mark ${figure} ${run} is square across from ${point}.`;
  return { says, measure: `${run.replace(/^from /, '')} to where ${point} is square across`, figure };
}

function level(told: ToldObservation): ObservationWords {
  const [held, laid] = heldFirst(told);
  const { names, of } = told;
  if (isNothing(of)) {
    const pair = pairWords(names, held, laid);
    return { says: `Bring ${pair} level with each other.`, measure: `${pair} are level` };
  }
  const figure = withoutSign(told.figure);
  const [first, second] = of.grips;
  const [before, after] = of.reading > 0 ? [first, second] : [second, first];
  const [a, b] = endsOf(told, first);
  const direction = `from ${a} to ${b}`;
  const measure = `how far ${place(told, after)} is ahead of ${place(told, before)}, looking ${direction}`;
  return {
    says: `Shift ${thing(told, laid)} until ${place(told, after)} is ${figure} ahead of ${place(told, before)}, looking ${direction}.`,
    measure,
    figure,
  };
}

/** A small thing has no length to sight along: the sides of its base show its line. */
function inRow(told: ToldObservation): ObservationWords {
  const [held, laid] = heldFirst(told).map((grip) => thing(told, grip));
  const says = `Bring ${laid} into line with ${held}, sighting along the sides of their bases.`;
  return { says, measure: `${laid} is in line with ${held}` };
}

function inLine(told: ToldObservation): ObservationWords {
  const [line, other] = told.of.grips;
  const point = pointWords(told, other);
  if (isSmall(namedPiece(told.names, pieceOf(line)))) return inRow(told);
  if (isNothing(told.of)) {
    const measure = `${point} is in line with ${thing(told, line)}`;
    const says =
      told.laid === 1
        ? `Sight along ${thing(told, line)} and bring ${point} into its line.`
        : `Sight along ${thing(told, line)} and turn it until it points at ${point}.`;
    return { says, measure };
  }
  const figure = withoutSign(told.figure);
  const [a, b] = endsOf(told, line);
  const hand = told.of.reading > 0 ? 'left' : 'right';
  const measure = `the line of ${thing(told, line)} square to ${point}, on the ${hand} looking from ${a} to ${b}`;
  return { says: `Tape ${figure} from ${measure}.`, measure, figure };
}

function square(told: ToldObservation): ObservationWords {
  const [held, laid] = heldFirst(told).map((grip) => thing(told, grip));
  if (!isNothing(told.of)) {
    const measure = `${laid} stands at ${angleWords(told.of.reading)} to ${held}`;
    return { says: `Turn ${laid} until it stands at ${angleWords(told.of.reading)} to ${held}.`, measure };
  }
  const isByBoard = told.names.plan.crew.rightAngle === 'board';
  const triangle = isByBoard ? undefined : triangleWords(told.names, heldFirst(told).map(pieceOf));
  const how = triangle === undefined ? 'with the board' : `by 3-4-5: ${triangle}`;
  return { says: `Set ${laid} square to ${held} ${how}.`, measure: `${laid} is square to ${held}` };
}

function against(told: ToldObservation): ObservationWords {
  const [end, long] = told.of.grips;
  const side = `the side of ${thing(told, long)}`;
  if (!isNothing(told.of)) {
    const ends = [place(told, end), side];
    const measure = (told.laid === 0 ? ends.toReversed() : ends).join(' to ');
    return { says: `Tape ${told.figure} from ${measure}, square to it.`, measure, figure: told.figure };
  }
  const measure = `${place(told, end)} lies against ${side}`;
  const says =
    told.laid === 0
      ? `Push ${place(told, end)} up against ${side}.`
      : `Push ${side} up against ${place(told, end)} of ${thing(told, end)}.`;
  return { says, measure };
}

const WORDS: Readonly<Record<ObservationKind, (told: ToldObservation) => ObservationWords>> = {
  gap,
  between,
  beside,
  clear,
  ahead,
  level,
  'in-line': inLine,
  square,
  against,
  'off-wall': offWall,
  'along-wall': alongWall,
  'from-rail': fromRail,
};

/** An observation as a crew is told it. `laid` is the key of the piece that is laid by it; what else it grips lies. */
export function observationWords(names: PartNames, of: Observation, laid: string): ObservationWords {
  const [first] = of.grips;
  const which = 'piece' in first && first.piece === laid ? 0 : 1;
  const words = WORDS[of.kind]({ names, of, laid: which, figure: readingWords(of.reading, namedUnit(names)) });
  return { ...words, says: capitalized(words.says) };
}
