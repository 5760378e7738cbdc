import { parsedJson } from './json.ts';
import { isJsonObject, jsonValueWords } from './json-path.ts';

/** One reading as it stands in a file, before anything is made of it. */
export interface WrittenReading {
  /** The line of the file that it begins on, from 1. */
  readonly line: number;
  readonly fields: unknown;
}

export type WrittenReadings =
  | { readonly kind: 'read'; readonly readings: readonly WrittenReading[] }
  | { readonly kind: 'refused'; readonly why: string };

const COLUMNS = ['kind', 'from', 'to', 'reads', 'sure'] as const;

/** Where the members of the list begin that a top field of a JSON text holds. The text is JSON. */
function memberPlaces(text: string, field: string): readonly number[] {
  const places: number[] = [];
  let depth = 0;
  let inList = false;
  let awaits = false;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text.charAt(at);
    if (/[\s,:]/.test(sign)) {
      if (sign === ',' && inList && depth === 2) awaits = true;
      continue;
    }
    if (sign === ']' || sign === '}') {
      depth -= 1;
      awaits = false;
      if (depth < 2) inList = false;
      continue;
    }
    if (inList && depth === 2 && awaits) {
      places.push(at);
      awaits = false;
    }
    if (sign === '"') {
      const end = /"(?:[^"\\]|\\.)*"/y;
      end.lastIndex = at;
      const [name = '"'] = end.exec(text) ?? [];
      at += name.length - 1;
      if (depth === 1 && name === `"${field}"` && /^\s*:\s*\[/.test(text.slice(at + 1))) inList = true;
    } else if (sign === '[' || sign === '{') {
      depth += 1;
      if (inList && depth === 2) awaits = true;
    }
  }
  return places;
}

function lineAt(text: string, place: number): number {
  return text.slice(0, place).split('\n').length;
}

function fromJson(text: string): WrittenReadings {
  const parsed = parsedJson(text);
  if (parsed.kind === 'refused') return parsed;
  const list = isJsonObject(parsed.value) ? parsed.value.readings : undefined;
  if (!Array.isArray(list)) {
    const found = isJsonObject(parsed.value) ? parsed.value.readings : parsed.value;
    return {
      kind: 'refused',
      why: `A list under "readings" belongs there; found was ${jsonValueWords(found)}.`,
    };
  }
  const places = memberPlaces(text, 'readings');
  return {
    kind: 'read',
    readings: list.map((fields: unknown, i) => ({ line: lineAt(text, places[i] ?? 0), fields })),
  };
}

/** The fields of one line. A field in quotes may hold the separator; an inch mark inside of a field is left as it is. */
function separated(line: string, by: string): readonly string[] {
  const fields: string[] = [];
  let rest = line;
  for (;;) {
    const quoted = /^\s*"((?:[^"]|"")*)"\s*$/.exec(rest) ?? undefined;
    const [, inside, after] = new RegExp(`^\\s*"((?:[^"]|"")*)"\\s*${by}([^]*)$`).exec(rest) ?? [];
    if (inside !== undefined && after !== undefined) {
      fields.push(inside.replaceAll('""', '"'));
      rest = after;
      continue;
    }
    if (quoted !== undefined) return [...fields, (quoted[1] ?? '').replaceAll('""', '"')];
    const at = rest.indexOf(by);
    if (at < 0) return [...fields, rest.trim()];
    fields.push(rest.slice(0, at).trim());
    rest = rest.slice(at + 1);
  }
}

function fromTable(text: string): WrittenReadings {
  const lines = text.split(/\r?\n/).map((line, i) => ({ line: i + 1, text: line }));
  const [head, ...rest] = lines.filter((each) => each.text.trim() !== '' && !each.text.trimStart().startsWith('#'));
  if (head === undefined) return { kind: 'refused', why: 'The file is empty; write one reading on each line.' };
  const by = [';', '\t'].find((each) => head.text.includes(each)) ?? ',';
  const names = separated(head.text, by).map((name) => name.toLowerCase());
  const strange = names.filter((name) => !COLUMNS.some((column) => column === name));
  const missing = COLUMNS.slice(0, 4).filter((column) => !names.includes(column));
  if (strange.length + missing.length > 0) {
    return {
      kind: 'refused',
      why: `Line ${head.line} is "${head.text.trim()}"; the names of the columns belong there: ${COLUMNS.join(by)}.`,
    };
  }
  return {
    kind: 'read',
    readings: rest.map(({ line, text: row }) => {
      const fields = separated(row, by);
      const named = names.flatMap((name, i) =>
        fields[i] === undefined || fields[i] === '' ? [] : [[name, fields[i]]],
      );
      const more = fields.slice(names.length).map((field, i) => [`column ${names.length + i + 1}`, field] as const);
      return { line, fields: Object.fromEntries([...named, ...more]) as unknown };
    }),
  };
}

/** The readings of a text, JSON or a table with a line of column names, each with its line. Never throws. */
export function writtenReadings(text: string): WrittenReadings {
  const plain = text.replace(/^\uFEFF/, '');
  return /^\s*[[{]/.test(plain) ? fromJson(plain) : fromTable(plain);
}
