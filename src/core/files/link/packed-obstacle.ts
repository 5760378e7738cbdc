/**
 * An obstacle as a link carries it: its kind, its pose and the values that are not usual; of its lists only what is not as
 * those values build it.
 */
import * as z from 'zod/mini';
import { freeId } from '../../course/ids.ts';
import { SCHEMA_PARTS } from '../../course/schema.ts';
import { buildObstacle, usualValues } from '../../obstacles/build.ts';
import type { Obstacle } from '../../obstacles/obstacle.ts';
import { obstacleKind } from '../../obstacles/obstacles.ts';
import { completeValues, type Params, type Values } from '../../pieces/params.ts';
import { pieceKind } from '../../pieces/pieces.ts';
import { packedPose, roundedNumbers, unpackedPose } from './link-numbers.ts';

const values = SCHEMA_PARTS.values;
const anything = z.unknown();

/**
 * A list that is not as the values build it. An item is a built one by its place; a built one with some fields in place of
 * its own (null: it has not this field); or whole.
 */
const packedItem = z.union([
  z.int(),
  z.tuple([z.int(), z.record(z.string(), anything)]),
  z.record(z.string(), anything),
]);
type PackedItem = z.infer<typeof packedItem>;

/** Fields that most obstacles do not have. */
const own = z.strictObject({
  id: z.exactOptional(z.string()),
  name: z.exactOptional(z.string()),
  side: z.exactOptional(z.literal(-1)),
  /** It was made by hand: its kind has values, and it has none. */
  bare: z.exactOptional(z.literal(true)),
  pieces: z.exactOptional(z.array(packedItem)),
  constraints: z.exactOptional(z.array(packedItem)),
  passages: z.exactOptional(z.array(packedItem)),
});
type Own = z.infer<typeof own>;

/** Kind, x, y, degrees, values, and its own fields; what is empty at the end is left out. */
export const packedObstacleSchema = z.union([
  z.tuple([z.string(), z.number(), z.number(), z.number()]),
  z.tuple([z.string(), z.number(), z.number(), z.number(), values]),
  z.tuple([z.string(), z.number(), z.number(), z.number(), values, own]),
]);
export type PackedObstacle = z.infer<typeof packedObstacleSchema>;

type Listed = Readonly<Record<'pieces' | 'constraints' | 'passages', readonly Item[]>>;
const NO_LISTS: Listed = { pieces: [], constraints: [], passages: [] };

/** Numbers nearer than this are the same, metres and radians: twice the rounding of a link. */
const SAME = 2.5e-5;

/** Whether two values of JSON say the same but for rounding. */
function isSame(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= SAME;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  // Both are objects: a field that one has not is undefined.
  return [...keys].every((key) => isSame((a as Fields)[key], (b as Fields)[key]));
}

type Fields = Readonly<Record<string, unknown>>;
type Item = { readonly id: string };

function packedItemOf(item: Item, built: readonly Item[]): PackedItem {
  const at = built.findIndex(({ id }) => id === item.id);
  const like = built[at] as Fields | undefined;
  if (like === undefined) return { ...item };
  const here = item as Fields;
  const keys = [...new Set([...Object.keys(item), ...Object.keys(like)])];
  const other = keys.filter((key) => !isSame(here[key], like[key]));
  if (other.length === 0) return at;
  return [at, Object.fromEntries(other.map((key) => [key, here[key] ?? null]))];
}

function unpackedItem(item: PackedItem, built: readonly Item[]): unknown {
  if (typeof item === 'number') return built[item];
  if (!Array.isArray(item)) return item;
  const [at, instead] = item;
  const whole = { ...built[at], ...instead };
  return Object.fromEntries(Object.entries(whole).filter(([, value]) => value !== null));
}

/** The list packed; undefined where it is as it is built. */
function packedList(list: readonly Item[], built: readonly Item[]): PackedItem[] | undefined {
  const items = list.map((item) => packedItemOf(item, built));
  const isBuilt = items.length === built.length && items.every((item, i) => item === i);
  return isBuilt ? undefined : items;
}

/** The values that are not usual. What is usual may hang on another value, so it is asked again until it comes out. */
function unusualValues(kind: string, all: Values): Values {
  const known = obstacleKind(kind);
  if (known === undefined) return all;
  const usual = usualValues(known, {});
  let given = Object.fromEntries(Object.entries(all).filter(([key, value]) => !isSame(usual[key], value)));
  const missed = Object.entries(all).filter(([key, value]) => !isSame(usualValues(known, given)[key], value));
  given = { ...given, ...Object.fromEntries(missed) };
  return isSame(usualValues(known, given), all) ? given : all;
}

/** All values from those that a link carries. */
function allValues(kind: string, given: Values): Values {
  const known = obstacleKind(kind);
  return known === undefined || Object.keys(known.params).length === 0 ? given : usualValues(known, given);
}

/** With the values that were added after the first files, where it has none of them: so they mean the usual ones. */
function withAllValues(obstacle: Obstacle): Obstacle {
  const complete = (params: Params | undefined, values: Values) =>
    Object.keys(values).length === 0 ? values : { ...completeValues(params ?? {}, values), ...values };
  return {
    ...obstacle,
    values: complete(obstacleKind(obstacle.kind)?.params, obstacle.values),
    pieces: obstacle.pieces.map((piece) => ({
      ...piece,
      values: complete(pieceKind(piece.kind)?.params, piece.values),
    })),
  };
}

/** What the values build; empty lists where they build nothing. */
function builtLists(kind: string, complete: Values, side: 1 | -1): Listed {
  const made = buildObstacle(kind, kind, complete, { x: 0, y: 0, angle: 0 }, side);
  return 'pieces' in made ? made : NO_LISTS;
}

function isBare({ kind, values }: Obstacle): boolean {
  return Object.keys(values).length === 0 && Object.keys(obstacleKind(kind)?.params ?? {}).length > 0;
}

/** The passages that a link carries: those that are ridden, and those that cost nothing because they are built. */
function passagesToCarry({ passages }: Obstacle, built: Listed, ridden: ReadonlySet<string>): Obstacle['passages'] {
  return passages.filter((each) => ridden.has(each.id) || typeof packedItemOf(each, built.passages) === 'number');
}

/** What those before an obstacle are called, and which of its passages are ridden. */
export interface PackingContext {
  readonly before: readonly string[];
  readonly ridden: ReadonlySet<string>;
}

/** The obstacle packed, and the ids of the passages that are carried, in their order. */
export function packedObstacle(
  given: Obstacle,
  { before, ridden }: PackingContext,
): { readonly packed: PackedObstacle; readonly passages: readonly string[] } {
  const obstacle = withAllValues(given);
  const { id, kind, name, side, pieces, constraints } = obstacle;
  const bare = isBare(given);
  // Rounding leaves every value of the kind that it had.
  const values = roundedNumbers(bare ? {} : unusualValues(kind, obstacle.values)) as Values;
  const built = bare ? NO_LISTS : builtLists(kind, allValues(kind, values), side);
  const passages = passagesToCarry(obstacle, built, ridden);
  const fields: Own = {
    ...(id === freeId(kind, before) ? {} : { id }),
    ...(name === undefined ? {} : { name }),
    ...(side === 1 ? {} : { side }),
    ...(bare ? { bare } : {}),
  };
  for (const [list, items] of Object.entries({ pieces, constraints, passages })) {
    const packedItems = packedList(items, built[list as keyof Listed]);
    if (packedItems !== undefined) fields[list as keyof Listed] = roundedNumbers(packedItems) as PackedItem[];
  }
  const pose = packedPose(obstacle.pose);
  const hasFields = Object.keys(fields).length > 0;
  const hasValues = Object.keys(values).length > 0;
  const packed: PackedObstacle = hasFields
    ? [kind, ...pose, values, fields]
    : hasValues
      ? [kind, ...pose, values]
      : [kind, ...pose];
  return { packed, passages: passages.map((each) => each.id) };
}

/** The obstacle in the form of a file, not yet checked. */
export function unpackedObstacle(
  packed: PackedObstacle,
  before: readonly string[],
): Item & { passages: readonly unknown[] } {
  const [kind, x, y, degrees, given = {}, fields = {}] = packed;
  const side = fields.side ?? 1;
  const values = fields.bare ? {} : allValues(kind, given);
  const built = fields.bare ? NO_LISTS : builtLists(kind, values, side);
  const list = (name: keyof Listed) => fields[name]?.map((item) => unpackedItem(item, built[name])) ?? built[name];
  const whole = {
    id: fields.id ?? freeId(kind, before),
    kind,
    ...(fields.name === undefined ? {} : { name: fields.name }),
    values,
    pose: unpackedPose([x, y, degrees]),
    side,
    pieces: list('pieces'),
    constraints: list('constraints'),
    passages: list('passages'),
  };
  return whole;
}
