import type { Course } from '../course/course.ts';

/** Objects and lists that fit into this many columns stand on one line. */
const COLUMNS = 100;

/**
 * The order of fields in a file, for all objects at once. Fields that are not listed (parameters, limits) follow in
 * alphabetical order, so that equal courses have equal bytes.
 */
const FIELDS: readonly string[] = [
  ...['format', 'version', 'id', 'show', 'title', 'level', 'date', 'entries', 'list', 'number', 'rider'],
  ...['changeover', 'dragEvery', 'drag', 'allotted', 'leadChange', 'kind', 'name', 'unit'],
  ...['arena', 'truck', 'horse', 'rulebook', 'class', 'day', 'waived', 'layouts', 'current', 'notes'],
  ...['crew', 'people', 'truckAt'],
  ...['x', 'y', 'angle', 'wall', 'piece', 'at', 'fraction', 'way', 'length', 'width', 'entrance'],
  ...['values', 'count', 'pose', 'move', 'by', 'about', 'fixed', 'grips', 'hold', 'side'],
  ...['pieces', 'obstacles', 'constraints', 'passages', 'gaits', 'stations'],
  ...[
    'ride',
    'start',
    'legs',
    'end',
    'obstacle',
    'passage',
    'openWay',
    'gait',
    'approach',
    'lead',
    'bends',
    'passes',
    'hand',
    'words',
    'wordsFor',
  ],
  ...[
    'starts',
    'drawn',
    'scratched',
    'late',
    'from',
    'classes',
    'layout',
    'judge',
    'startsAt',
    'riders',
    'breaks',
    'restBetween',
  ],
  ...['house', 'least', 'most', 'finding', 'reason'],
];

const RANKS = new Map(FIELDS.map((field, rank) => [field, rank]));

function rank(field: string): number {
  return RANKS.get(field) ?? FIELDS.length;
}

function byFieldOrder([a]: readonly [string, unknown], [b]: readonly [string, unknown]): number {
  return rank(a) - rank(b) || (a < b ? -1 : 1);
}

/** The course as the text of a file: always the same bytes for the same course, with a line break at the end. */
export function writeCourse(course: Course): string {
  return `${jsonText(course, { indent: '', label: '', path: 'course' })}\n`;
}

/** Where a value is printed: its line's indent, the field before it, and its path for messages. */
interface Spot {
  readonly indent: string;
  readonly label: string;
  readonly path: string;
}

function jsonText(value: unknown, { indent, label, path }: Spot): string {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new Error(`writeCourse: ${path} is ${value}; a file holds finite numbers only`);
  }
  if (typeof value !== 'object' || value === null) return label + JSON.stringify(value);
  const deeper = `${indent}  `;
  const lines = Array.isArray(value)
    ? value.map((item, index) => jsonText(item, { indent: deeper, label: '', path: `${path}[${index}]` }))
    : Object.entries(value)
        .filter(([, item]) => item !== undefined)
        .sort(byFieldOrder)
        .map(([field, item]) => {
          return jsonText(item, { indent: deeper, label: `${JSON.stringify(field)}: `, path: `${path}.${field}` });
        });
  const [opens, closes] = Array.isArray(value) ? ['[', ']'] : ['{', '}'];
  if (lines.length === 0) return label + opens + closes;
  const space = Array.isArray(value) ? '' : ' ';
  const flat = `${label}${opens}${space}${lines.join(', ')}${space}${closes}`;
  // A comma may follow.
  if (path !== 'course' && indent.length + flat.length < COLUMNS && !flat.includes('\n')) return flat;
  return `${label}${opens}\n${lines.map((line) => deeper + line).join(',\n')}\n${indent}${closes}`;
}
