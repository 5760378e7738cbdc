import { parsedJson } from '../files/json.ts';
import { isJsonObject, jsonValueWords } from '../files/json-path.ts';
import { type Migration, migrate } from '../files/migrations.ts';
import { schemaErrors } from '../files/schema-errors.ts';
import { CARD_FORMAT, CARD_VERSION, type ScoreCard, scoreCardSchema } from './score-card.ts';

export type CardReading =
  | { readonly kind: 'read'; readonly card: ScoreCard }
  | { readonly kind: 'refused'; readonly why: string };

/** All steps from past versions, oldest first. Version 1 is the first, so there are none. */
const CARD_MIGRATIONS: readonly Migration[] = [];

/** Signs; 600 entries at 60 obstacles with a note each stay below. */
const LONGEST = 20_000_000;
const MOST_ERRORS = 3;

function refused(...errors: readonly string[]): CardReading {
  const more = errors.length - MOST_ERRORS;
  const told = errors.slice(0, MOST_ERRORS);
  return { kind: 'refused', why: [...told, ...(more > 0 ? [`And ${more} more of the kind.`] : [])].join(' ') };
}

function repeated(ids: readonly string[]): readonly string[] {
  return [...new Set(ids.filter((id, i) => ids.indexOf(id) !== i))];
}

/** What a schema cannot say: ids are there once, and what was given is on the card's own list. */
function errorsIn({ scoring, columns, entries }: ScoreCard): readonly string[] {
  const { least, most } = scoring.scale;
  const penalties = new Set(scoring.penalties.map(({ id }) => id));
  const rulings = new Set(scoring.rulings.map(({ id }) => id));
  const twice = [
    ...repeated(entries.map(({ id }) => id)).map((id) => `Two entries have the id "${id}".`),
    ...repeated(columns.map(({ leg }) => leg)).map((leg) => `Two obstacles have the leg "${leg}".`),
    ...repeated(scoring.penalties.map(({ id }) => id)).map((id) => `Two penalties have the id "${id}".`),
  ];
  const given = entries.flatMap(({ id, number, cells, ruling }) => {
    const who = number === '' ? `Entry ${id}` : `Entry ${number}`;
    const own = ruling === undefined || rulings.has(ruling) ? [] : [`${who} has the unknown ruling "${ruling}".`];
    const inCells = Object.values(cells).flatMap(({ score, penalties: listed }) => [
      ...(typeof score === 'number' && (score < least || score > most)
        ? [`${who} has a score of ${score}; the list goes from ${least} to ${most}.`]
        : []),
      ...listed.filter((each) => !penalties.has(each)).map((each) => `${who} has the unknown penalty "${each}".`),
    ]);
    return [...own, ...inCells];
  });
  return [...twice, ...given];
}

/** Reads the text of a card. Never throws, whatever the text. */
export function readCard(text: string): CardReading {
  const bare = text.replace(/^\uFEFF/, '');
  if (bare.trim() === '') return refused('The file is empty.');
  if (bare.length > LONGEST) return refused(`The file is ${bare.length} signs long; a card has at most ${LONGEST}.`);
  const parsed = parsedJson(bare);
  if (parsed.kind === 'refused') return parsed;
  const file = parsed.value;
  if (!isJsonObject(file)) return refused(`The file is JSON, but no score card: it holds ${jsonValueWords(file)}.`);
  const { format, version } = file;
  if (format !== CARD_FORMAT) {
    return refused(`The file says "format": ${jsonValueWords(format)}; a score card says "${CARD_FORMAT}".`);
  }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return refused(`The version of the card is ${jsonValueWords(version)}; ${CARD_VERSION} would be right.`);
  }
  if (version > CARD_VERSION) {
    return refused(
      `The card has version ${version}, and this program reads up to version ${CARD_VERSION}. Open it with a newer Polewright.`,
    );
  }
  const current = migrate(file, version, { to: CARD_VERSION, steps: CARD_MIGRATIONS });
  if (current.kind === 'refused') return current;
  const checked = scoreCardSchema.safeParse(current.value);
  if (!checked.success) return refused(...schemaErrors(current.value, checked.error.issues));
  const errors = errorsIn(checked.data);
  return errors.length > 0 ? refused(...errors) : { kind: 'read', card: checked.data };
}

/** The text of a card as a file. */
export function cardText(card: ScoreCard): string {
  return `${JSON.stringify(card, null, 2)}\n`;
}
