/** Signs of the ride that have words: the end, the hand at what is worked by hand, the letters of markers. */
import type { PlacedPiece } from '../core/course/placed.ts';
import { pathEnd } from '../core/plane/path.ts';
import { type Pose, toLocal } from '../core/plane/pose.ts';
import type { Survey } from '../core/survey.ts';
import { markOverhang } from './ground.ts';
import { handOf } from './handled-words.ts';
import { onPaper, type PaperTransform, perMetre } from './paper-transform.ts';
import { type Label, letterLabel, wordLabel } from './pattern-labels.ts';

/** Where the go ends; undefined before anything is ridden. */
export function endOf(survey: Survey): Pose | undefined {
  if (survey.layout.ride.legs.length === 0) return undefined;
  if (survey.layout.ride.end !== undefined) return survey.layout.ride.end;
  const last = survey.line.elements.at(-1);
  return last === undefined || last.path.length === 0 ? undefined : pathEnd(last.path);
}

/** At a gate, a mailbox or the like: the rider's hand that works it, as the words have it. */
export function gateHands(survey: Survey, transform: PaperTransform, numbers: readonly number[]): readonly Label[] {
  return numbers.flatMap((number) => {
    const work = survey.line.elements.find(({ leg, move }) => leg === number - 1 && move === 'work');
    const leg = survey.layout.ride.legs[number - 1];
    const placed = survey.obstacles.find(({ obstacle }) => obstacle.id === leg?.obstacle);
    const passage = placed?.obstacle.passages.find(({ id }) => id === leg?.passage);
    const station = passage?.stations.find((each) => each.kind === 'reach' && each.move === 'work');
    const piece = placed?.pieces.find((each) => station?.kind === 'reach' && each.piece.id === station.piece);
    const from = work?.path[0]?.start;
    if (work === undefined || piece === undefined || from === undefined) return [];
    const horse = { ...from, angle: from.angle + work.facing };
    const hand = handOf(toLocal(horse, piece.pose).y);
    return [wordLabel(`${hand} hand`, onPaper(transform, piece.pose), { reach: 1 })];
  });
}

/** The letters of markers, each to be read with its own. */
export function letterLabels(
  survey: Survey,
  transform: PaperTransform,
  pieces: readonly PlacedPiece[],
): readonly Label[] {
  const lettered = pieces.flatMap((piece) => {
    const letter = survey.letters.get(piece.key);
    if (letter === undefined) return [];
    const half = (Math.max(piece.figure.length, piece.figure.width) / 2) * perMetre(transform);
    return [{ letter, at: onPaper(transform, piece.pose), reach: Math.max(half, markOverhang(transform, piece)) }];
  });
  return lettered.map(({ letter, at, reach }) => {
    const others = lettered.filter((other) => other.letter !== letter).map((other) => other.at);
    return letterLabel(letter, at, { reach, others });
  });
}
