/** Where something stands in a course file, in plain words, and what stands there. */

export type JsonPath = readonly PropertyKey[];

/** What one member of a list is called. */
const MEMBERS: Readonly<Record<string, string>> = {
  layouts: 'layout',
  obstacles: 'obstacle',
  pieces: 'piece',
  constraints: 'constraint',
  passages: 'passage',
  stations: 'station',
  gaits: 'gait',
  grips: 'grip',
  legs: 'leg',
  bends: 'bend',
  truck: 'truck line',
};

export function isJsonObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function member(value: unknown, key: PropertyKey): unknown {
  // A list is read by its index as an object is by its key.
  return typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined;
}

export function valueAt(file: unknown, path: JsonPath): unknown {
  return path.reduce<unknown>(member, file);
}

/** `layout "main", obstacle "fan-1", pose, x`: members of lists by their id where they have one, else counted from 1. */
export function jsonPathWords(file: unknown, path: JsonPath): string {
  const words: string[] = [];
  let here = file;
  for (const [i, key] of path.entries()) {
    here = member(here, key);
    const list = path[i - 1];
    if (typeof key !== 'number') {
      const listed = MEMBERS[String(key)] !== undefined && typeof path[i + 1] === 'number';
      if (!listed) words.push(fieldWords(String(key)));
      continue;
    }
    const id = isJsonObject(here) && typeof here.id === 'string' ? JSON.stringify(here.id) : String(key + 1);
    words.push(`${MEMBERS[String(list)] ?? 'item'} ${id}`);
  }
  return words.length === 0 ? 'the file' : words.join(', ');
}

function fieldWords(field: string): string {
  return /^[A-Za-z0-9-]+$/.test(field) ? field : JSON.stringify(field);
}

const LONGEST = 40;

/** What was found, short and as it is written. */
export function jsonValueWords(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (isJsonObject(value)) return 'a group of fields';
  if (typeof value === 'number' && !Number.isFinite(value)) return 'a number without end';
  const text = JSON.stringify(value);
  const short = text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
  return typeof value === 'string' ? `the text ${short}` : short;
}
