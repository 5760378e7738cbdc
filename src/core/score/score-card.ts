/**
 * score/ adds up what a judge gave: a card of entries and obstacles, its totals and its placings. It is an aid to the scribe and never
 * the official result. Points are multiples of a half, which binary numbers hold exactly.
 */
import * as z from 'zod/mini';

/** Names the format in the file; the version grows when an old reader would misread a new file. */
export const CARD_FORMAT = 'polewright-score-card';
export const CARD_VERSION = 1;

/** Stands on every output. */
export const SCORE_CAUTION = 'An aid to the scribe, not the official result.';

const halves = z.number().check(z.multipleOf(0.5), z.gte(-1000), z.lte(1000));
const text = z.string().check(z.maxLength(2000));
const id = z.string().check(z.minLength(1), z.maxLength(120));

const cell = z.strictObject({
  /** Absent: none yet. `none`: the rule book leaves this obstacle without a score, and the go is whole. */
  score: z.exactOptional(z.union([halves, z.literal('none')])),
  /** Ids of penalties in the order of the rule book, each as often as it was given. */
  penalties: z.array(id).check(z.maxLength(99)),
  note: z.exactOptional(text),
});

const entry = z.strictObject({
  id,
  /** As it is worn. */
  number: text,
  rider: text,
  horse: text,
  /** By the id of the leg. */
  cells: z.record(id, cell),
  /** What ends the go, by the id of the ruling. */
  ruling: z.exactOptional(id),
  note: z.exactOptional(text),
  /** Time on the course, seconds. */
  time: z.exactOptional(z.number().check(z.gte(0))),
  /** Among entries that are tied, the judge's order: 1 is before 2. */
  order: z.exactOptional(z.int().check(z.gte(1), z.lte(999))),
  scratched: z.exactOptional(z.literal(true)),
});

const penalty = z.strictObject({
  id,
  points: halves,
  fault: text,
  /** The go may not be placed above one without such a fault. */
  below: z.exactOptional(z.literal(true)),
  source: text,
});

const scoring = z.strictObject({
  book: text,
  /** Whose list it is, and what was seen of it. */
  about: z.array(text),
  base: halves,
  /** No total is lower; absent: the book does not say. */
  least: z.exactOptional(halves),
  scale: z.strictObject({ least: halves, most: halves, words: z.record(z.string(), text), source: text }),
  penalties: z.array(penalty),
  rulings: z.array(z.strictObject({ id, effect: z.enum(['zero-score', 'disqualified']), fault: text, source: text })),
  /** The fault for which an obstacle is left without a score. */
  unscored: z.exactOptional(text),
  /** Where goes with a zero score stand. */
  zero: z.enum(['last', 'unplaced']),
  /** What may break ties, and in which classes only. */
  tie: z.exactOptional(z.strictObject({ by: z.literal('time'), only: text, says: text })),
});

/** A card as a file. Points are multiples of a half, times seconds. */
export const scoreCardSchema = z.strictObject({
  format: z.literal(CARD_FORMAT),
  version: z.literal(CARD_VERSION),
  caution: z.literal(SCORE_CAUTION),
  course: text,
  layout: text,
  class: z.strictObject({ show: text, title: text, level: text, date: text }),
  judge: text,
  scoring,
  /** Who decides ties: the judge, or the time on the course. */
  ties: z.enum(['judge', 'time']),
  /** Obstacles in the order of the ride. */
  columns: z
    .array(
      z.strictObject({
        leg: id,
        number: z.int(),
        name: text,
        /** Why the obstacle counts for nobody. */
        struck: z.exactOptional(text),
      }),
    )
    .check(z.maxLength(60)),
  /** In the order of go. */
  entries: z.array(entry).check(z.maxLength(600)),
});

export type ScoreCard = z.infer<typeof scoreCardSchema>;
export type CardEntry = ScoreCard['entries'][number];
export type CardCell = CardEntry['cells'][string];
export type CardColumn = ScoreCard['columns'][number];
export type CardScoring = ScoreCard['scoring'];

/** The schema for other programs: JSON Schema, draft 2020-12. */
export function scoreCardJsonSchema(): string {
  const { $schema, ...rest } = z.toJSONSchema(scoreCardSchema);
  const title = `Polewright score card, version ${CARD_VERSION}`;
  const description = `What a judge gave, obstacle by obstacle, with the list it was given by. ${SCORE_CAUTION}`;
  return `${JSON.stringify({ $schema, title, description, ...rest }, null, 2)}\n`;
}
