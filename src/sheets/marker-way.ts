/** A way among markers in words: which it goes between, which it goes around, and on which side it begins. */
import type { PlacedPiece } from '../core/course/placed.ts';
import type { Radians } from '../core/measure/quantity.ts';
import { distance, lerp, type Point } from '../core/plane/point.ts';
import { normalizeAngle, type Pose, toLocal } from '../core/plane/pose.ts';
import { nearestFraction } from '../core/plane/segment.ts';
import { andList } from '../core/text/sentence.ts';

/** A marker with the letter that it has on the drawing. */
export interface LetteredMarker {
  readonly letter: string;
  readonly at: Point;
}

/** Where the line passes between two markers that have no other between them. */
interface Gate {
  readonly posts: readonly [LetteredMarker, LetteredMarker];
  /** The place as a number of stations from the first, with its fraction. */
  readonly along: number;
  readonly at: Point;
  /** Into the ground that the markers stand around, or out of it; empty where they stand around none. */
  readonly way: 'in' | 'out' | '';
}

/** A way that sweeps more than this about a marker goes around it; past it, less. Radians. */
const AROUND = (200 * Math.PI) / 180;
/** From here on a way goes all around a lone marker, radians: 270°. */
const ALL_AROUND = (3 * Math.PI) / 2;

/** Positive to the left of the line from a to b. */
function sideOf(a: Point, b: Point, point: Point): number {
  return (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x);
}

/** No third marker lies in the circle over the two: nothing stands between them. */
function areNeighbours(a: LetteredMarker, b: LetteredMarker, all: readonly LetteredMarker[]): boolean {
  return all.every(({ at }) => {
    const dot = (a.at.x - at.x) * (b.at.x - at.x) + (a.at.y - at.y) * (b.at.y - at.y);
    return at === a.at || at === b.at || dot > 0;
  });
}

/** On which side of the line from a to b all other markers stand; 0 where they stand on both, or on it. */
function othersSide([a, b]: Gate['posts'], all: readonly LetteredMarker[]): 1 | -1 | 0 {
  const length = (b.at.x - a.at.x) ** 2 + (b.at.y - a.at.y) ** 2;
  const sides = all
    .filter((each) => each !== a && each !== b)
    .map(({ at }) => sideOf(a.at, b.at, at) / length)
    .map((side) => (Math.abs(side) < 0.1 ? 0 : Math.sign(side)));
  const [first = 0] = sides;
  if (sides.some((side) => side !== first)) return 0;
  return first > 0 ? 1 : first < 0 ? -1 : 0;
}

function gatesOf(line: readonly Point[], markers: readonly LetteredMarker[]): readonly Gate[] {
  const pairs = markers.flatMap((a, i) => markers.slice(i + 1).map((b) => [a, b] as const));
  const gates = pairs
    .filter(([a, b]) => areNeighbours(a, b, markers))
    .flatMap(([a, b]) =>
      line.slice(1).flatMap((to, i): Gate[] => {
        const from = line[i] as Point;
        const [before, after] = [sideOf(a.at, b.at, from), sideOf(a.at, b.at, to)];
        // A station on the line between two markers belongs to its left, so that it is passed once.
        if (before < -1e-9 === after < -1e-9) return [];
        const fraction = before / (before - after);
        const at = lerp(from, to, Math.min(1, Math.max(0, fraction)));
        const across = nearestFraction([a.at, b.at], at);
        if (across <= 0 || across >= 1) return [];
        const inwards = othersSide([a, b], markers) * (after - before);
        const way = inwards > 0 ? 'in' : inwards < 0 ? 'out' : '';
        return [{ posts: [a, b], along: i + fraction, at, way }];
      }),
    );
  return gates.toSorted((one, other) => one.along - other.along);
}

/** How far round a place a line goes, counter-clockwise positive. */
function sweptAngle(line: readonly Point[], about: Point): Radians {
  const bearings = line.map((point) => Math.atan2(point.y - about.y, point.x - about.x));
  return bearings.slice(1).reduce((sum, bearing, i) => sum + normalizeAngle(bearing - (bearings[i] ?? 0)), 0);
}

/** How far round a marker the line goes from one place to another, signed. */
function sweep(line: readonly Point[], { at }: LetteredMarker, from: Gate, to: Gate): number {
  const between = line.filter((_, i) => i > from.along && i < to.along);
  return sweptAngle([from.at, ...between, to.at], at);
}

/** Where the line comes nearest to a marker: the place, how far along, and the rider's hand on which the marker is then. */
interface Passing {
  readonly marker: LetteredMarker;
  readonly at: Point;
  /** Stations from the first, with the fraction. */
  readonly along: number;
  readonly hand: 'left' | 'right';
}

function passingOf(line: readonly Pose[], marker: LetteredMarker): Passing {
  const places = line.map((from, i) => {
    const to = line[i + 1] ?? from;
    const fraction = nearestFraction([from, to], marker.at);
    const at = lerp(from, to, fraction);
    const { angle } = fraction > 0.5 ? to : from;
    const hand = toLocal({ ...at, angle }, { ...marker.at, angle: 0 }).y > 0 ? ('left' as const) : ('right' as const);
    return { marker, at, along: i + fraction, hand };
  });
  const [nearest] = places.toSorted((a, b) => distance(a.at, marker.at) - distance(b.at, marker.at));
  if (nearest === undefined) throw new Error('markerWords: expected a line of one pose or more, got none');
  return nearest;
}

/** The markers in the order in which the line passes them. */
function passed(line: readonly Pose[], markers: readonly LetteredMarker[]): readonly Passing[] {
  return markers.map((marker) => passingOf(line, marker)).toSorted((a, b) => a.along - b.along);
}

/** Its place among A … Z, AA, AB … */
function letterIndex(letter: string): number {
  return [...letter].reduce((sum, sign) => 26 * sum + sign.charCodeAt(0) - 64, 0);
}

/** "A and B", "A, B and C"; where four or more follow one another, "A to D". */
function rowWords(letters: readonly string[]): string {
  const places = letters.map(letterIndex);
  const steps = places.slice(1).map((place, i) => place - (places[i] ?? 0));
  const isRun = steps.every((step) => step === 1) || steps.every((step) => step === -1);
  return letters.length < 4 || !isRun ? andList(letters) : `${letters[0]} to ${letters.at(-1)}`;
}

/**
 * Whether the line goes along the row, through the gate between each marker and the next. A line straight through a gate
 * passes both of its markers at one place.
 */
function isWeave(gates: readonly Gate[], row: readonly Passing[]): boolean {
  return (
    gates.length === row.length - 1 &&
    gates.every(({ posts }, i) => {
      const [one, next] = [row[i], row[i + 1]];
      if (one === undefined || next === undefined) return false;
      const pitch = distance(one.marker.at, next.marker.at);
      return posts.includes(one.marker) && posts.includes(next.marker) && distance(one.at, next.at) > pitch / 2;
    })
  );
}

/** "between A and B, out between A and C, around C, in between B and C, and out between A and B". */
function gateWords(line: readonly Pose[], gates: readonly Gate[]): string {
  const parts = gates.flatMap((gate, i): string[] => {
    const { posts, way } = gate;
    const between = `between ${andList(posts.map(({ letter }) => letter))}`;
    const next = gates[i + 1];
    const shared =
      next === undefined
        ? undefined
        : posts.find((post) => next.posts.includes(post) && Math.abs(sweep(line, post, gate, next)) > AROUND);
    const passing = i === 0 || way === '' ? between : `${way} ${between}`;
    return shared === undefined ? [passing] : [passing, `around ${shared.letter}`];
  });
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')}, and ${parts.at(-1)}`;
}

/**
 * The way by two markers or more, without its verb. `line` has the poses of its stations on the ground, in order, the horse
 * facing as it does: the left hand is the rider's, also while it backs. A row that is passed on alternate sides is a serpentine.
 */
export function markerWords(line: readonly Pose[], markers: readonly LetteredMarker[]): string {
  const gates = gatesOf(line, markers);
  const row = passed(line, markers);
  const [first] = row;
  if (first !== undefined && isWeave(gates, row)) {
    const letters = row.map(({ marker }) => marker.letter);
    return `through ${rowWords(letters)} in a serpentine, starting with ${letters[0]} on your ${first.hand}`;
  }
  if (gates.length > 0) return gateWords(line, gates);
  const sides = (['left', 'right'] as const).flatMap((hand) => {
    const on = row.filter((each) => each.hand === hand).map(({ marker }) => marker.letter);
    return on.length === 0 ? [] : [`${andList(on)} on your ${hand}`];
  });
  return `past ${sides.join(', and ')}`;
}

/** "once around the marker to the left"; undefined where the way does not go all around it. */
export function roundsWords(line: readonly Pose[], about: Point, name: string): string | undefined {
  const round = sweptAngle(line, about);
  const rounds = Math.round(Math.abs(round) / (2 * Math.PI));
  if (Math.abs(round) < ALL_AROUND) return undefined;
  const times = rounds < 2 ? 'once' : rounds === 2 ? 'twice' : `${rounds} times`;
  return `${times} around ${name} to the ${round > 0 ? 'left' : 'right'}`;
}

/** The markers with their letters; those without one are left out. */
export function lettered(
  pieces: readonly PlacedPiece[],
  letters: ReadonlyMap<string, string>,
): readonly LetteredMarker[] {
  return pieces.flatMap(({ key, pose }) => {
    const letter = letters.get(key);
    return letter === undefined ? [] : [{ letter, at: pose }];
  });
}
