import { FOOT } from '../../core/measure/quantity.ts';
import type { Mark } from '../../core/plane/mark.ts';
import { distance, point } from '../../core/plane/point.ts';
import type { Bounds } from '../../core/plane/ring.ts';
import { messages } from '../../words/desk.ts';
import type { SnapCandidate, SnapSource, SnapSubject } from './snap.ts';

/** How far a guide line is drawn beyond what it joins. */
const OVERSHOOT = 2 * FOOT;
/** Poles within this of each other's direction count as parallel for lining up. */
const PARALLEL = Math.PI / 360;
const DASH = [0.3, 0.2];

type Side = 'min' | 'mid' | 'max';
type Flat = 'x' | 'y';

function edge(bounds: Bounds, axis: Flat, side: Side): number {
  const [low, high] = axis === 'x' ? [bounds.minX, bounds.maxX] : [bounds.minY, bounds.maxY];
  return side === 'min' ? low : side === 'max' ? high : (low + high) / 2;
}

function spot(axis: Flat, along: number, across: number) {
  return axis === 'x' ? point(along, across) : point(across, along);
}

/** A faint line at `value` of the axis, over the other axis from `from` to `to`. */
function lineAt(axis: Flat, value: number, span: readonly [number, number]): Mark {
  return { kind: 'line', ink: 'faint', dash: DASH, points: [spot(axis, value, span[0]), spot(axis, value, span[1])] };
}

/** At the clear distance from a wall; against it where no distance is asked for, or nobody rides what moves. */
const walls: SnapSource = (moving, { arena, clear, isRidden, unit }) => {
  const offs = clear === null || clear === 0 ? [0] : isRidden ? [clear] : [clear, 0];
  const pulls: SnapCandidate[] = [];
  for (const axis of ['x', 'y'] as const) {
    const size = axis === 'x' ? arena.length : arena.width;
    const across = axis === 'x' ? 'y' : 'x';
    for (const side of ['min', 'max'] as const) {
      const wall = axis === 'x' ? (side === 'min' ? 'west' : 'east') : side === 'min' ? 'south' : 'north';
      const inward = side === 'min' ? 1 : -1;
      const at = side === 'min' ? 0 : size;
      for (const off of offs) {
        pulls.push({
          axis,
          by: at + inward * off - edge(moving.bounds, axis, side),
          guide: (end) => {
            const middle = edge(end, across, 'mid');
            const tape: Mark = {
              kind: 'line',
              ink: 'measure',
              points: [spot(axis, at, middle), spot(axis, at + inward * off, middle)],
            };
            const span = [edge(end, across, 'min') - OVERSHOOT, edge(end, across, 'max') + OVERSHOOT] as const;
            return {
              says: off === 0 ? messages.againstWall(wall) : messages.atClearDistance(off, wall, unit),
              marks: off === 0 ? [lineAt(axis, at, span)] : [tape, lineAt(axis, at + inward * off, span)],
              snap: { to: 'wall', wall },
            };
          },
        });
      }
    }
  }
  return pulls;
};

/** On the arena's long and cross centre lines. */
const centreLines: SnapSource = (moving, { arena }) =>
  (['x', 'y'] as const).map((axis) => {
    const [half, span] = axis === 'x' ? [arena.length / 2, arena.width] : [arena.width / 2, arena.length];
    return {
      axis,
      by: half - edge(moving.bounds, axis, 'mid'),
      guide: () => ({
        says: messages.onCentreLine(axis),
        marks: [lineAt(axis, half, [0, span])],
        snap: { to: 'wall', wall: axis === 'x' ? 'west' : 'south' },
      }),
    };
  });

const LINED_UP: readonly (readonly [Side, Side])[] = [
  ['mid', 'mid'],
  ['min', 'min'],
  ['max', 'max'],
];

/** In line with the middle or an edge of another obstacle. */
const neighbours: SnapSource = (moving, { others, name }) => {
  const pulls: SnapCandidate[] = [];
  for (const other of others) {
    for (const axis of ['x', 'y'] as const) {
      const across = axis === 'x' ? 'y' : 'x';
      for (const [mine, theirs] of LINED_UP) {
        const value = edge(other.bounds, axis, theirs);
        pulls.push({
          axis,
          by: value - edge(moving.bounds, axis, mine),
          guide: (end) => ({
            says: messages.inLineWith(name(other.obstacle.id), mine === 'mid' ? 'middle' : 'edge'),
            marks: [
              lineAt(axis, value, [
                Math.min(edge(end, across, 'min'), edge(other.bounds, across, 'min')) - OVERSHOOT,
                Math.max(edge(end, across, 'max'), edge(other.bounds, across, 'max')) + OVERSHOOT,
              ]),
            ],
          }),
        });
      }
    }
  }
  return pulls;
};

/** The axis across which a pole lies square; null for one that lies at an angle, or that is not long. */
function squareAxis(angle: number): Flat | null {
  if (Math.abs(Math.cos(angle)) < PARALLEL) return 'x';
  if (Math.abs(Math.sin(angle)) < PARALLEL) return 'y';
  return null;
}

/** A pole on the same straight line as another obstacle's pole. */
const poleLines: SnapSource = (moving, { others }) => {
  const pulls: SnapCandidate[] = [];
  const mine = moving.pieces.filter((piece) => piece.figure.length > 4 * piece.figure.width);
  if (mine.length === 0) return pulls;
  const theirs = others.flatMap((other) => other.pieces.filter((each) => each.figure.length > 4 * each.figure.width));
  for (const pole of mine) {
    const axis = squareAxis(pole.pose.angle);
    if (axis === null) continue;
    const asked = axis === 'x' ? pole.pose.x + moving.shift.x : pole.pose.y + moving.shift.y;
    for (const other of theirs) {
      if (squareAxis(other.pose.angle) !== axis) continue;
      const value = axis === 'x' ? other.pose.x : other.pose.y;
      pulls.push({
        axis,
        by: value - asked,
        guide: (end) => {
          const across = axis === 'x' ? 'y' : 'x';
          const far = axis === 'x' ? other.pose.y : other.pose.x;
          const reach = other.figure.length / 2;
          const low = Math.min(edge(end, across, 'min'), far - reach) - OVERSHOOT;
          const high = Math.max(edge(end, across, 'max'), far + reach) + OVERSHOOT;
          return {
            says: messages.poleInLine(),
            marks: [lineAt(axis, value, [low, high])],
            snap: { to: 'pole', theirs: other.key, mine: pole.key },
          };
        },
      });
    }
  }
  return pulls;
};

/** Where a turned thing shows the direction to which it snapped. */
function heading(end: Bounds, angle: number): Mark {
  const middle = point((end.minX + end.maxX) / 2, (end.minY + end.maxY) / 2);
  const arm = Math.hypot(end.maxX - end.minX, end.maxY - end.minY) / 2 + OVERSHOOT;
  const [c, s] = [arm * Math.cos(angle), arm * Math.sin(angle)];
  return {
    kind: 'line',
    ink: 'faint',
    dash: DASH,
    points: [point(middle.x - c, middle.y - s), point(middle.x + c, middle.y + s)],
  };
}

function everyAngle(moving: SnapSubject, step: number, says: (angle: number) => string): readonly SnapCandidate[] {
  if (moving.angle === undefined) return [];
  const end = Math.round(moving.angle / step) * step;
  return [
    {
      axis: 'angle',
      by: end - moving.angle,
      guide: (bounds) => ({
        says: says(end),
        marks: [heading(bounds, end)],
        snap: { to: 'wall-angle' },
      }),
    },
  ];
}

/** Square to the walls, or half way between. */
const wallAngles: SnapSource = (moving) => everyAngle(moving, Math.PI / 4, (angle) => messages.squareToWalls(angle));

/** Whole steps of 15 degrees. */
const fifteenths: SnapSource = (moving) => everyAngle(moving, Math.PI / 12, (angle) => messages.atAngle(angle));

/** Parallel, square or half way between, to a pole of a neighbour; of poles that lie alike, to the nearest. */
const neighbourAngles: SnapSource = ({ angle, bounds: box }, { others, name }) => {
  if (angle === undefined) return [];
  const middle = point((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2);
  const eighth = Math.PI / 4;
  return others
    .flatMap(({ pieces }) => pieces.filter((piece) => piece.figure.length > 4 * piece.figure.width))
    .sort((a, b) => distance(a.pose, middle) - distance(b.pose, middle))
    .map((pole): SnapCandidate => {
      const turn = Math.round((angle - pole.pose.angle) / eighth) * eighth;
      const end = pole.pose.angle + turn;
      return {
        axis: 'angle',
        by: end - angle,
        guide: (bounds) => ({
          says: messages.atAngleTo(turn, name(pole.key)),
          marks: [heading(bounds, end)],
          ...(isHalfWay(turn) ? {} : { snap: { to: 'pole', theirs: pole.key } }),
        }),
      };
    });
};

/** Neither parallel nor square: nothing offers to keep that between two poles. */
function isHalfWay(turn: number): boolean {
  return Math.abs(Math.sin(2 * turn)) > PARALLEL;
}

/** Half way between the nearest neighbours on its two sides, where each has it in line. */
export const midways: SnapSource = (moving, { others, name }) =>
  (['x', 'y'] as const).flatMap((axis) => {
    const across = axis === 'x' ? 'y' : 'x';
    const inLine = others.filter(
      ({ bounds }) =>
        edge(bounds, across, 'min') <= edge(moving.bounds, across, 'max') &&
        edge(bounds, across, 'max') >= edge(moving.bounds, across, 'min'),
    );
    const before = inLine
      .filter(({ bounds }) => edge(bounds, axis, 'max') <= edge(moving.bounds, axis, 'min'))
      .sort((a, b) => edge(b.bounds, axis, 'max') - edge(a.bounds, axis, 'max'))[0];
    const after = inLine
      .filter(({ bounds }) => edge(bounds, axis, 'min') >= edge(moving.bounds, axis, 'max'))
      .sort((a, b) => edge(a.bounds, axis, 'min') - edge(b.bounds, axis, 'min'))[0];
    if (before === undefined || after === undefined) return [];
    const [low, high] = [edge(before.bounds, axis, 'max'), edge(after.bounds, axis, 'min')];
    return [
      {
        axis,
        by: (low + high) / 2 - edge(moving.bounds, axis, 'mid'),
        guide: (end: Bounds) => {
          const level = edge(end, across, 'mid');
          const tape = (from: number, to: number): Mark => ({
            kind: 'line',
            ink: 'measure',
            points: [spot(axis, from, level), spot(axis, to, level)],
          });
          return {
            says: messages.midway(name(before.obstacle.id), name(after.obstacle.id)),
            marks: [tape(low, edge(end, axis, 'min')), tape(edge(end, axis, 'max'), high)],
          };
        },
      },
    ];
  });

/** In order of priority. */
export const PLACE_SOURCES: readonly SnapSource[] = [walls, centreLines, neighbours, poleLines, midways];
/** For several things at once, which have no one heading. */
export const GROUP_TURN_SOURCES: readonly SnapSource[] = [fifteenths];
export const TURN_SOURCES: readonly SnapSource[] = [wallAngles, fifteenths, neighbourAngles];
