import { LIMITS } from '../checks/rulebooks/limits.ts';
import { RULEBOOKS, rulebookById } from '../checks/rulebooks/rulebooks.ts';
import type { Constraint, ConstraintKind } from '../constraints/constraint.ts';
import { CONSTRAINT_KINDS, constraintKind } from '../constraints/constraints.ts';
import type { Arena, Course, Layout } from '../course/course.ts';
import { pieceKey } from '../course/placed.ts';
import { HORSES, horseById } from '../horses/horses.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { OBSTACLE_KINDS, obstacleKind } from '../obstacles/obstacles.ts';
import type { Passage } from '../obstacles/passage.ts';
import type { Params, Values } from '../pieces/params.ts';
import { PIECE_KINDS, pieceKind } from '../pieces/pieces.ts';

/** A bound that arithmetic reached is still reached, in the parameter's own unit. */
const ROUNDING = 1e-9;
/** No angle that is held is more than a whole turn, radians. */
const MOST_HELD_ANGLE = 2 * Math.PI + ROUNDING;

function printed(value: number): string {
  return String(Number(value.toFixed(6)));
}

/** `"a", "b"`: the valid names, for a person who wrote another. */
function idList(known: readonly { readonly id: string }[]): string {
  return known.map(({ id }) => id).join(', ');
}

function duplicateErrors(items: readonly { readonly id: string }[], what: string): readonly string[] {
  const seen = new Set<string>();
  const twice = new Set<string>();
  for (const { id } of items) (seen.has(id) ? twice : seen).add(id);
  return [...twice].map(
    (id) => `${what.replace(/ Layout "/, ' layout "')} has the id "${id}" twice; each must have its own.`,
  );
}

/** What is wrong with given values: a key the kind does not have, a text for a number, an option it does not have. */
function valueErrors(params: Params, values: Values, place: string): readonly string[] {
  return Object.entries(values).flatMap(([key, value]) => {
    const param = Object.hasOwn(params, key) ? params[key] : undefined;
    if (param === undefined) {
      return [`${place} has a value "${key}"; it may have ${Object.keys(params).join(', ') || 'none'}.`];
    }
    if (param.kind === 'choice') {
      const options = Object.keys(param.options);
      if (typeof value === 'string' && options.includes(value)) return [];
      return [`${place} has ${JSON.stringify(value)} for ${key}; it is one of ${options.join(', ')}.`];
    }
    if (typeof value === 'string') return [`${place} has the text "${value}" for ${key}; a number would be right.`];
    if (param.kind === 'count' && !Number.isInteger(value)) {
      return [`${place} has ${value} for ${key}; a whole number would be right.`];
    }
    if (value >= param.least - ROUNDING && value <= param.most + ROUNDING) return [];
    const unit = param.kind === 'length' ? ' m' : param.kind === 'angle' ? ' radians' : '';
    return [
      `${place} has ${value}${unit} for ${key}; ${printed(param.least)} to ${printed(param.most)}${unit} would be right.`,
    ];
  });
}

/** A held length is no longer than the arena is across its corners, and a held angle no more than a whole turn. */
function holdErrors(
  { hold }: Constraint,
  kind: ConstraintKind,
  { arena, here }: { readonly arena: Arena; readonly here: string },
): readonly string[] {
  if (hold === undefined) return [];
  if (kind.unit === 'none') return [`${here} holds ${hold}; ${kind.id} has no number to hold.`];
  if (kind.unit === 'rad') {
    if (Math.abs(hold) <= MOST_HELD_ANGLE) return [];
    return [`${here} holds ${hold} radians; at most a whole turn, ${printed(2 * Math.PI)}, would be right.`];
  }
  const most = Math.hypot(arena.length, arena.width);
  if (Math.abs(hold) <= most) return [];
  return [`${here} holds ${hold} m; at most ${printed(most)} m, the arena from corner to corner, would be right.`];
}

function constraintErrors(
  constraint: Constraint,
  pieces: ReadonlySet<string>,
  { place, arena }: { readonly place: string; readonly arena: Arena },
): readonly string[] {
  const here = `${place}, constraint "${constraint.id}"`;
  const kind = constraintKind(constraint.kind);
  if (kind === undefined) {
    return [`${here} is of the kind "${constraint.kind}"; known are ${idList(CONSTRAINT_KINDS)}.`];
  }
  const faults = holdErrors(constraint, kind, { arena, here });
  const missing = constraint.grips.flatMap((grip) =>
    'piece' in grip && !pieces.has(grip.piece) ? [`${here} grips the piece "${grip.piece}", which is not there.`] : [],
  );
  const takes = constraint.grips.map((grip) => ('piece' in grip ? 'piece' : 'wall'));
  if (takes.join() === kind.takes.join()) return [...faults, ...missing];
  return [
    ...faults,
    ...missing,
    `${here} grips ${takes.join(', ') || 'nothing'}; ${kind.id} takes ${kind.takes.join(', ')}.`,
  ];
}

function passageErrors(passage: Passage, pieces: ReadonlySet<string>, place: string): readonly string[] {
  const here = `${place}, passage "${passage.id}"`;
  const first = passage.stations[0];
  const opens = first?.kind === 'cross' || (first?.kind === 'reach' && first.move === 'ride');
  const missing = passage.stations.flatMap((station, index) =>
    station.kind !== 'turn' && !pieces.has(station.piece)
      ? [`${here}, station ${index + 1} is at the piece "${station.piece}", which is not there.`]
      : [],
  );
  return opens ? missing : [...missing, `${here} must begin with a pole to cross or a place to ride to.`];
}

function obstacleErrors(obstacle: Obstacle, place: string, arena: Arena): readonly string[] {
  const here = `${place}, obstacle "${obstacle.id}"`;
  const pieces = new Set(obstacle.pieces.map((piece) => piece.id));
  const kind = obstacleKind(obstacle.kind);
  const kindFaults =
    kind === undefined
      ? [`${here} is of the kind "${obstacle.kind}"; known are ${idList(OBSTACLE_KINDS)}.`]
      : valueErrors(kind.params, obstacle.values, here);
  return [
    ...kindFaults,
    ...duplicateErrors(obstacle.pieces, `A piece of ${here}`),
    ...duplicateErrors(obstacle.constraints, `A constraint of ${here}`),
    ...duplicateErrors(obstacle.passages, `A passage of ${here}`),
    ...obstacle.pieces.flatMap((piece) => pieceErrors(piece.kind, piece.values, `${here}, piece "${piece.id}"`)),
    ...obstacle.constraints.flatMap((constraint) => constraintErrors(constraint, pieces, { place: here, arena })),
    ...obstacle.passages.flatMap((passage) => passageErrors(passage, pieces, here)),
  ];
}

function pieceErrors(id: string, values: Values, place: string): readonly string[] {
  const kind = pieceKind(id);
  if (kind === undefined) return [`${place} is of the kind "${id}"; known are ${idList(PIECE_KINDS)}.`];
  return valueErrors(kind.params, values, place);
}

function legErrors(layout: Layout, place: string): readonly string[] {
  const byId = new Map(layout.obstacles.map((obstacle) => [obstacle.id, obstacle]));
  return layout.ride.legs.flatMap((leg) => {
    const here = `${place}, leg "${leg.id}"`;
    const obstacle = byId.get(leg.obstacle);
    if (obstacle === undefined) return [`${here} rides the obstacle "${leg.obstacle}", which is not in the layout.`];
    const passed = (leg.passes ?? []).filter((each) => !byId.has(each.obstacle));
    if (passed.length > 0) {
      return passed.map((each) => `${here} passes the obstacle "${each.obstacle}", which is not in the layout.`);
    }
    if (obstacle.passages.some((passage) => passage.id === leg.passage)) return [];
    const known = idList(obstacle.passages) || 'no passage';
    return [`${here} takes the passage "${leg.passage}"; "${obstacle.id}" has ${known}.`];
  });
}

function layoutErrors(layout: Layout, arena: Arena): readonly string[] {
  const here = `Layout "${layout.id}"`;
  const keys = new Set(layout.obstacles.flatMap((each) => each.pieces.map((piece) => pieceKey(each.id, piece.id))));
  return [
    ...duplicateErrors(layout.obstacles, `An obstacle of ${here}`),
    ...duplicateErrors(layout.constraints, `A constraint of ${here}`),
    ...duplicateErrors(layout.ride.legs, `A leg of ${here}`),
    ...layout.obstacles.flatMap((obstacle) => obstacleErrors(obstacle, here, arena)),
    ...layout.constraints.flatMap((constraint) => constraintErrors(constraint, keys, { place: here, arena })),
    ...legErrors(layout, here),
  ];
}

function houseRuleErrors(house: Course['rulebook']['house']): readonly string[] {
  return Object.entries(house).flatMap(([name, { least, most }]) => {
    if (!Object.hasOwn(LIMITS, name)) {
      return [`The house rule "${name}" is of no limit that is known; known are ${Object.keys(LIMITS).join(', ')}.`];
    }
    if (least === undefined || most === undefined || least <= most) return [];
    return [`The house rule "${name}" allows from ${least} to ${most}, which is nothing; the least comes first.`];
  });
}

/** A date of the form that is no day of the calendar. */
function dateErrors(date: string): readonly string[] {
  if (date === '') return [];
  const day = new Date(`${date}T00:00:00Z`);
  const isDay = !Number.isNaN(day.getTime()) && day.toISOString().startsWith(date);
  return isDay
    ? []
    : [`Class, date is "${date}", which is no day of the calendar; one such as 2027-05-01 would be right.`];
}

/** A truck stands in the arena or near it, metres: nobody carries poles further. Estimate, generous. */
const TRUCK_NEAR = 100;

function truckErrors({ crew, arena: { length, width } }: Course): readonly string[] {
  const at = crew?.truckAt;
  if (at === undefined) return [];
  const off = Math.max(-at.x, at.x - length, -at.y, at.y - width);
  if (off <= TRUCK_NEAR) return [];
  return [
    `The truck stands ${printed(off)} m outside the arena; in it, or at most ${TRUCK_NEAR} m outside, would be right.`,
  ];
}

/** What the classes of a day name must be there. */
function dayErrors({ day, layouts }: Course): readonly string[] {
  if (day === undefined) return [];
  const known = new Set(layouts.map(({ id }) => id));
  return [
    ...duplicateErrors(day.classes, 'A class of the day'),
    ...duplicateErrors(day.breaks, 'A break of the day'),
    ...day.classes.flatMap(({ id, list = [] }) => duplicateErrors(list, `An entry of the class "${id}" of the day`)),
    ...day.classes
      .filter(({ layout }) => !known.has(layout))
      .map(({ id, layout }) => `Class "${id}" of the day rides the layout "${layout}"; there are ${idList(layouts)}.`),
  ];
}

/** One sentence for each thing in a well-formed course that makes no sense: ids, references, kinds, values. */
export function semanticErrors(course: Course): readonly string[] {
  return [
    ...(horseById(course.horse) ? [] : [`The horse is "${course.horse}"; known are ${idList(HORSES)}.`]),
    ...(rulebookById(course.rulebook.id)
      ? []
      : [`The rule book is "${course.rulebook.id}"; known are ${idList(RULEBOOKS)}.`]),
    ...dateErrors(course.class.date),
    ...duplicateErrors(course.class.list ?? [], 'An entry of the class'),
    ...truckErrors(course),
    ...houseRuleErrors(course.rulebook.house),
    ...duplicateErrors(course.truck, 'A line of the truck list'),
    ...course.truck.flatMap((stock) => pieceErrors(stock.kind, stock.values, `Truck line "${stock.id}"`)),
    ...duplicateErrors(course.layouts, 'A layout'),
    ...course.layouts.flatMap((layout) => layoutErrors(layout, course.arena)),
    ...dayErrors(course),
  ];
}
