/** What was ticked and read of one part of a set-out, as it was planned. */
export interface PartNotes {
  /** Ids of what is done. */
  readonly ticks: readonly string[];
  /** What was typed, by the id of what it is a reading of. */
  readonly readings: Readonly<Record<string, string>>;
}

/** What this browser remembers of one layout's set-out. */
export interface SetOutNotes {
  /** By the print of a part: another plan of the part has notes of its own. */
  readonly parts: Readonly<Record<string, PartNotes>>;
  /** The id of what was shown last; absent: the first. */
  readonly at?: string;
}

export const SET_OUT_KEY = 'polewright-set-out';
export const NO_NOTES: SetOutNotes = { parts: {} };
export const NO_PART_NOTES: PartNotes = { ticks: [], readings: {} };

/** The layouts that were set out last are remembered, so many. */
const MOST_LAYOUTS = 12;
/** Plans of parts that are remembered of one layout; the ones noted last stay. */
const MOST_PARTS = 120;

type Kept = readonly { readonly of: string; readonly notes: SetOutNotes }[];

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function readPart(value: unknown): PartNotes {
  if (!isRecord(value)) return NO_PART_NOTES;
  const { ticks, readings } = value;
  return {
    ticks: Array.isArray(ticks) ? ticks.filter((each) => typeof each === 'string') : [],
    readings: isRecord(readings)
      ? Object.fromEntries(
          Object.entries(readings).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
        )
      : {},
  };
}

function readNotes(value: unknown): SetOutNotes {
  if (!isRecord(value) || !isRecord(value.parts)) return NO_NOTES;
  const parts = Object.fromEntries(Object.entries(value.parts).map(([print, part]) => [print, readPart(part)]));
  return typeof value.at === 'string' ? { parts, at: value.at } : { parts };
}

function readAll(storage: Pick<Storage, 'getItem'>): Kept {
  const kept: unknown = JSON.parse(storage.getItem(SET_OUT_KEY) ?? '[]');
  if (!Array.isArray(kept)) return [];
  return kept.flatMap((each) =>
    isRecord(each) && typeof each.of === 'string' ? [{ of: each.of, notes: readNotes(each.notes) }] : [],
  );
}

/** What this browser remembers of a layout's set-out; nothing where it remembers nothing or something else. */
export function readSetOutNotes(of: string, storage: () => Pick<Storage, 'getItem'> = () => localStorage): SetOutNotes {
  try {
    return readAll(storage()).find((each) => each.of === of)?.notes ?? NO_NOTES;
  } catch {
    return NO_NOTES;
  }
}

/** Remembers it; false where the browser stores nothing, and it holds until the page is left. */
export function writeSetOutNotes(
  of: string,
  notes: SetOutNotes,
  storage: () => Pick<Storage, 'getItem' | 'setItem'> = () => localStorage,
): boolean {
  const parts = Object.fromEntries(Object.entries(notes.parts).slice(-MOST_PARTS));
  try {
    const others = otherNotes(of, storage());
    storage().setItem(SET_OUT_KEY, JSON.stringify([{ of, notes: { ...notes, parts } }, ...others]));
    return true;
  } catch {
    return false;
  }
}

/** What else is remembered; nothing where that cannot be read any more. */
function otherNotes(of: string, storage: Pick<Storage, 'getItem'>): Kept {
  try {
    return readAll(storage)
      .filter((each) => each.of !== of)
      .slice(0, MOST_LAYOUTS - 1);
  } catch {
    return [];
  }
}
