import { changedLeg } from '../course/edits.ts';
import type { PlacedObstacle, PlacedPiece } from '../course/placed.ts';
import type { Passage } from '../obstacles/passage.ts';
import type { Point } from '../plane/point.ts';
import { boundsMeet } from '../plane/ring.ts';
import { ringSegmentDistance } from '../plane/segment.ts';
import type { Element } from '../ride/line.ts';
import type { Survey } from '../survey.ts';
import { MARGIN } from './band.ts';
import type { Check, Found, Proposal } from './check.ts';
import { chordsOf, halfWidth } from './swath.ts';
import { obstacleWords, pieceWords, valueWords, wayWords } from './words.ts';

/** A piece that the horse meets where it has no business with it. */
interface Contact {
  readonly piece: PlacedPiece;
  readonly at: Point;
  /** From the middle of the horse to the piece, and what the horse needs on that side. */
  readonly clear: number;
  readonly needs: number;
}

/** Whether meeting the piece is in order, so far along the element and with so much of it left, metres. */
type Pardon = (piece: PlacedPiece, along: number, rest: number) => boolean;

function passageOf(survey: Survey, leg: number): Passage | undefined {
  const ridden = survey.layout.ride.legs[leg];
  const obstacle = survey.layout.obstacles.find((each) => each.id === ridden?.obstacle);
  return obstacle?.passages.find((each) => each.id === ridden?.passage);
}

function stationPiece(passage: Passage | undefined, end: 0 | -1): string | undefined {
  const stations = passage?.stations.filter((station) => station.kind !== 'turn');
  const station = stations?.at(end);
  return station?.kind === 'cross' || station?.kind === 'reach' ? station.piece : undefined;
}

/** Beside what it comes from and goes to a horse may pass close; only across it counts, metres. */
const BRUSHED = 0.01;

/** The obstacles that an element comes from and goes to. */
function ownsOf(survey: Survey, { part, leg }: Element): readonly (string | undefined)[] {
  const { legs } = survey.layout.ride;
  return part === 'approach' ? [legs[leg]?.obstacle, legs[leg - 1]?.obstacle] : [legs[leg]?.obstacle];
}

/** A horse that comes to a station or leaves it is over the station's piece for its own length. */
function pardonOf(survey: Survey, element: Element, obstacle: PlacedObstacle): Pardon {
  const { legs } = survey.layout.ride;
  const { horse } = survey;
  const id = obstacle.obstacle.id;
  if (element.part === 'obstacle') return () => legs[element.leg]?.obstacle === id;
  const leaves = element.part === 'finish' ? element.leg : element.leg - 1;
  const first = element.part === 'approach' && legs[element.leg]?.obstacle === id;
  const last = legs[leaves]?.obstacle === id;
  if (!first && !last) return () => false;
  const entered = first ? stationPiece(passageOf(survey, element.leg), 0) : undefined;
  const left = last ? stationPiece(passageOf(survey, leaves), -1) : undefined;
  const length = horse.bodyLength.value;
  const reach = horse.wheelbase.value / 2;
  return (piece, along, rest) =>
    (first && rest <= (piece.piece.id === entered ? length : reach)) ||
    (last && along <= (piece.piece.id === left ? length : reach));
}

function contactsOf(survey: Survey, element: Element, obstacle: PlacedObstacle): readonly Contact[] {
  const { points, along, bounds } = chordsOf(element.path);
  const widest = halfWidth(survey.horse, element, 'standing');
  if (!boundsMeet(bounds, obstacle.bounds, widest)) return [];
  const pardon = pardonOf(survey, element, obstacle);
  const own = ownsOf(survey, element).includes(obstacle.obstacle.id);
  const whole = along.at(-1) ?? 0;
  return obstacle.pieces.flatMap((piece): Contact[] => {
    const needs = own ? BRUSHED : halfWidth(survey.horse, element, piece.figure.stands);
    let worst: Contact | undefined;
    for (let i = 1; i < points.length; i += 1) {
      const a = points[i - 1];
      const b = points[i];
      if (a === undefined || b === undefined) continue;
      const clear = ringSegmentDistance(piece.footprint, [a, b]);
      if (clear >= needs - MARGIN || clear >= (worst?.clear ?? Number.POSITIVE_INFINITY)) continue;
      if (pardon(piece, along[i] ?? 0, whole - (along[i - 1] ?? 0))) continue;
      worst = { piece, at: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, clear, needs };
    }
    return worst === undefined ? [] : [worst];
  });
}

/** How far outside an obstacle's box a bend goes round it. */
const ROUND = 1.5;

/** One bend at each corner of what is in the way, when the way has no bends yet. */
function wayRound(survey: Survey, element: Element, { bounds }: PlacedObstacle): readonly Proposal[] {
  const leg = survey.layout.ride.legs[element.leg];
  if (leg === undefined || element.part !== 'approach' || leg.bends.length > 0) return [];
  const { length, width } = survey.course.arena;
  const corners = [
    { name: 'south-west', x: bounds.minX - ROUND, y: bounds.minY - ROUND },
    { name: 'south-east', x: bounds.maxX + ROUND, y: bounds.minY - ROUND },
    { name: 'north-east', x: bounds.maxX + ROUND, y: bounds.maxY + ROUND },
    { name: 'north-west', x: bounds.minX - ROUND, y: bounds.maxY + ROUND },
  ];
  return corners
    .filter(({ x, y }) => x > 1 && y > 1 && x < length - 1 && y < width - 1)
    .map(({ name, x, y }) => ({
      says: `Lead the line to ${obstacleWords(survey, leg.obstacle)} round it by the ${name} with a bend`,
      edit: (course) => changedLeg(course, leg.id, { bends: [{ x, y }] }),
    }));
}

function foundFor(survey: Survey, element: Element, obstacle: PlacedObstacle): Found[] {
  const contacts = contactsOf(survey, element, obstacle);
  const [nearest] = [...contacts].sort((a, b) => a.clear - b.clear);
  if (nearest === undefined) return [];
  const leg = survey.layout.ride.legs[element.leg];
  const { unit } = survey.course;
  const stands = contacts.some(({ piece }) => piece.figure.stands === 'standing');
  const way = wayWords(survey, element.part, leg?.obstacle ?? '');
  const what = pieceWords(survey, nearest.piece.key);
  const needs = valueWords('length', nearest.needs, unit);
  const says =
    nearest.clear <= MARGIN
      ? `${way} goes ${stands ? 'through' : 'over'} ${what}, which is not being ridden there.`
      : `${way} passes ${valueWords('length', nearest.clear, unit)} from ${what}; the horse needs ${needs} on each side.`;
  return [
    {
      id: `line-crosses:${leg?.id ?? element.leg}:${element.part}:${obstacle.obstacle.id}`,
      check: 'line-crosses',
      weight: stands ? 'must' : 'should',
      says,
      because: stands ? 'A horse cannot go through what stands in its way.' : lineCrosses.because,
      at: nearest.at,
      leg: element.leg,
      keys: [...new Set([obstacle.obstacle.id, ...contacts.map(({ piece }) => piece.key)])],
      measured: nearest.clear,
      allowed: { least: nearest.needs },
      source: stands ? survey.horse.bodyWidth.source : survey.horse.stance.source,
      proposals: wayRound(survey, element, obstacle),
    },
  ];
}

export const lineCrosses: Check = {
  id: 'line-crosses',
  says: 'The line keeps off everything that is not being ridden.',
  because: 'A pole in the way that is not part of the obstacle is hit, or is taken for part of it.',
  weight: 'must',
  limits: [],
  run(survey) {
    const found = survey.line.elements.flatMap((element) =>
      survey.obstacles.flatMap((obstacle) => foundFor(survey, element, obstacle)),
    );
    // One way may be made of several elements: the same crossing is told once, at its worst.
    const worst = new Map<string, Found>();
    for (const each of found) {
      const known = worst.get(each.id);
      if (known === undefined || (each.measured ?? 0) < (known.measured ?? 0)) worst.set(each.id, each);
    }
    return [...worst.values()];
  },
};
