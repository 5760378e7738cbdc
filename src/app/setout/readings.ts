/** What a crew may read of a part: the tapes of its steps and checks, and the straight between any two places. */
import type { Grip } from '../../core/constraints/constraint.ts';
import { readLength } from '../../core/measure/length.ts';
import { feet, type LengthUnit, type Metres, type Reading } from '../../core/measure/quantity.ts';
import type { GroundReading } from '../../core/setout/built/adjust.ts';
import { groundOf } from '../../core/setout/built/adjust-equations.ts';
import { isSmall } from '../../core/setout/observables.ts';
import { predicted } from '../../core/setout/observation-error.ts';
import type { Observable, SetOutCrew } from '../../core/setout/setout.ts';
import { namedPiece, partPieceWords, placeWords } from '../../core/setout/words/place-words.ts';
import { readingWords } from '../../core/setout/words/reading-words.ts';
import type { Survey } from '../../core/survey.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { setoutWords } from '../../words/setout.ts';
import type { PartActs } from './acts.ts';

/** Something of a part that a tape can read. */
export interface ReadingRow {
  readonly id: string;
  /** "Pole 1 to pole 2, inside to inside, at ends A and C". */
  readonly what: string;
  readonly of: Observable;
  /** What it reads by the plan; a tape shows it without its sign. */
  readonly planned: number;
  readonly sigma: number;
  /** It was asked for beside those of the plan. */
  readonly isMore?: true;
}

/** A place from which or to which a tape may be laid. */
export interface TapePlace {
  readonly id: string;
  readonly title: string;
  readonly grip: Extract<Grip, { piece: string }>;
}

/** Farther from the plan than this nobody's tape is right, metres. Estimate: a wrong mark is a foot or a metre off. */
const FARTHEST: Readonly<Record<LengthUnit, Metres>> = { ft: feet(10), m: 3 };
const MORE = 'straight-';
const APART = '|';

/** The tapes of the plan's steps and checks, by step. What is only looked at has no row. */
export function plannedRows({ steps }: PartActs): readonly (readonly ReadingRow[])[] {
  return steps.map(({ acts }) =>
    acts.flatMap(({ id, of, isRead, measure }): readonly ReadingRow[] =>
      of === undefined || !isRead ? [] : [{ id, what: capitalized(measure), of, planned: of.reading, sigma: of.sigma }],
    ),
  );
}

/** The ends of the part's long pieces by letter, and its small things. */
export function tapePlaces({ part, names }: PartActs): readonly TapePlace[] {
  return part.steps.flatMap(({ piece }): readonly TapePlace[] => {
    const ends = isSmall(namedPiece(names, piece)) ? [0.5] : [0, 1];
    return ends.map((at) => {
      const grip = { piece, at };
      const title = ends.length === 1 ? partPieceWords(names, piece) : placeWords(names, grip);
      return { id: `${piece}@${at}`, title: capitalized(title), grip };
    });
  });
}

/** The name of the straight reading between two places. */
export function moreId(from: TapePlace, to: TapePlace): string {
  return `${MORE}${from.id}${APART}${to.id}`;
}

/** The row of a straight reading by its name; undefined where the part has not both places. */
export function moreRow(part: PartActs, id: string, survey: Survey, crew: SetOutCrew): ReadingRow | undefined {
  if (!id.startsWith(MORE)) return undefined;
  const places = tapePlaces(part);
  const [from, to] = id
    .slice(MORE.length)
    .split(APART)
    .map((each) => places.find((place) => place.id === each));
  if (from === undefined || to === undefined || from === to) return undefined;
  const of: Observable = { kind: 'between', grips: [from.grip, to.grip], side: 1 };
  const { exact, sigma } = predicted(groundOf(survey), of, crew);
  return { id, what: setoutWords.straightFrom(from.title, to.title), of, planned: exact, sigma, isMore: true };
}

/** What was typed for a row, with the sign that its plan has; refused where it cannot be what the tape reads there. */
export function typedReading({ planned }: ReadingRow, text: string, unit: LengthUnit): Reading<Metres> {
  const read = readLength(text, unit);
  if (read.kind === 'refused') return read;
  if (read.value < 0) return { kind: 'refused', why: setoutWords.belowNothing };
  if (Math.abs(read.value - Math.abs(planned)) > FARTHEST[unit]) {
    return { kind: 'refused', why: setoutWords.tooFar(readingWords(FARTHEST[unit], unit)) };
  }
  return { kind: 'read', value: planned < 0 ? -read.value : read.value };
}

/** Everything that was typed for a part and can be read, with its row. */
export function typedReadings(
  part: PartActs,
  typed: Readonly<Record<string, string>>,
  { survey, crew }: { readonly survey: Survey; readonly crew: SetOutCrew },
): readonly { readonly row: ReadingRow; readonly reading: GroundReading }[] {
  const planned = plannedRows(part).flat();
  const more = Object.keys(typed).flatMap((id) => moreRow(part, id, survey, crew) ?? []);
  return [...planned, ...more].flatMap((row) => {
    const text = typed[row.id];
    if (text === undefined) return [];
    const read = typedReading(row, text, crew.marked);
    const { kind, grips, side, from, runs } = row.of;
    const of: Observable = {
      kind,
      grips,
      side,
      ...(from !== undefined && { from }),
      ...(runs !== undefined && { runs }),
    };
    return read.kind === 'read' ? [{ row, reading: { ...of, read: read.value, sigma: row.sigma } }] : [];
  });
}
