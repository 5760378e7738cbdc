import { shiftByKeys } from '../../course/edit-obstacles.ts';
import { changeLeg } from '../../course/edit-ride.ts';
import type { PlacedObstacle, PlacedPiece } from '../../course/placed.ts';
import type { Horse } from '../../horses/horse.ts';
import type { Radians } from '../../measure/quantity.ts';
import { pairCache } from '../../memo/by-identity.ts';
import type { Passage } from '../../obstacles/passage.ts';
import type { Path } from '../../plane/path.ts';
import { lerp, type Point } from '../../plane/point.ts';
import { boundsIntersect } from '../../plane/ring.ts';
import { ringSegmentDistance, type Segment, segmentPointDistance } from '../../plane/segment.ts';
import type { LineElement } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Proposal, RawFinding } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { linePartWords, obstacleWords, pieceWords } from '../findings/thing-words.ts';
import { halfWidth } from '../geometry/half-width.ts';
import { chordsOf } from '../geometry/path-chords.ts';
import { BAND_TOLERANCE } from '../rulebooks/band.ts';

/** A piece that the line comes too near to although it does not belong to what is ridden there. */
interface Contact {
  readonly piece: PlacedPiece;
  readonly at: Point;
  /** Distance along the line. */
  readonly heading: Radians;
  /** From the middle of the horse to the piece, and what the horse needs on that side. */
  readonly clear: number;
  readonly needs: number;
}

/**
 * How much of an element, at its start and end, may touch the obstacle's pieces, metres: for its own length the horse
 * is over the station's piece named here, and for less beside the others.
 */
interface ContactExemption {
  readonly atStart: boolean;
  readonly atEnd: boolean;
  readonly startPiece: string | undefined;
  readonly endPiece: string | undefined;
}

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

/**
 * Beside the obstacle that it comes from or goes to a horse may pass close; only crossing its pieces counts, metres.
 */
const BRUSHED = 0.01;

/** The obstacles that an element comes from and goes to. */
export function ownsOf(survey: Survey, { part, leg }: LineElement): readonly (string | undefined)[] {
  const { legs } = survey.layout.ride;
  return part === 'approach' ? [legs[leg]?.obstacle, legs[leg - 1]?.obstacle] : [legs[leg]?.obstacle];
}

function contactExemption(survey: Survey, element: LineElement, id: string): ContactExemption {
  const { legs } = survey.layout.ride;
  const before = element.part === 'finish' ? element.leg : element.leg - 1;
  // A way has an element for each gait on it; only its ends lie at obstacles.
  const way = survey.line.elements.filter(({ leg, part }) => leg === element.leg && part === element.part);
  const atEnd = element.part === 'approach' && way.at(-1) === element && legs[element.leg]?.obstacle === id;
  const atStart = way[0] === element && legs[before]?.obstacle === id;
  return {
    atStart,
    atEnd,
    endPiece: atEnd ? stationPiece(passageOf(survey, element.leg), 0) : undefined,
    startPiece: atStart ? stationPiece(passageOf(survey, before), -1) : undefined,
  };
}

/** The part of a chord that lies between two distances along the element; absent: none of it. */
function clippedChord([a, b]: Segment, [start, end]: readonly [number, number], [from, to]: readonly [number, number]) {
  if (end <= from || start >= to || end <= start) return undefined;
  const at = (along: number): Point => lerp(a, b, (along - start) / (end - start));
  return [at(Math.max(from, start)), at(Math.min(to, end))] as const;
}

const contactCache = pairCache<Path, PlacedObstacle, readonly Contact[]>();

function contactsOf(survey: Survey, element: LineElement, obstacle: PlacedObstacle): readonly Contact[] {
  const own = ownsOf(survey, element).includes(obstacle.obstacle.id);
  if (own && element.part === 'obstacle') return [];
  const pardon = own ? contactExemption(survey, element, obstacle.obstacle.id) : undefined;
  const { atStart, atEnd, startPiece, endPiece } = pardon ?? {};
  const because = `${survey.horse.id} ${element.facing} ${atStart} ${atEnd} ${startPiece} ${endPiece}`;
  const work = () => uncachedContacts(survey.horse, element, { obstacle, pardon });
  return contactCache(element.path, obstacle, { because, work });
}

function uncachedContacts(
  horse: Horse,
  element: LineElement,
  { obstacle, pardon }: { readonly obstacle: PlacedObstacle; readonly pardon: ContactExemption | undefined },
): readonly Contact[] {
  const { points, along, bounds } = chordsOf(element.path);
  const whole = along.at(-1) ?? 0;
  const length = horse.bodyLength.value;
  const reach = horse.wheelbase.value / 2;
  return obstacle.pieces.flatMap((piece): Contact[] => {
    const needs = pardon === undefined ? halfWidth(horse, element, piece.figure.stands) : BRUSHED;
    if (!boundsIntersect(bounds, piece.bounds, needs)) return [];
    const around = Math.hypot(piece.figure.length, piece.figure.width) / 2;
    const first = pardon?.atStart ? (piece.piece.id === pardon.startPiece ? length : reach) : 0;
    const last = pardon?.atEnd ? (piece.piece.id === pardon.endPiece ? length : reach) : 0;
    let worst: Contact | undefined;
    for (let i = 1; i < points.length; i += 1) {
      const [a, b] = [points[i - 1], points[i]];
      if (a === undefined || b === undefined) continue;
      // Most chords are far away: their middles show it before anything is clipped.
      const [aside, ahead] = [(a.x + b.x) / 2 - piece.pose.x, (a.y + b.y) / 2 - piece.pose.y];
      const near = needs + around + Math.hypot(b.x - a.x, b.y - a.y) / 2;
      if (aside * aside + ahead * ahead > near * near) continue;
      const chord = clippedChord([a, b], [along[i - 1] ?? 0, along[i] ?? 0], [first, whole - last]);
      if (chord === undefined || segmentPointDistance(chord, piece.pose) > needs + around) continue;
      const clear = ringSegmentDistance(piece.footprint, chord);
      if (clear >= needs - BAND_TOLERANCE || clear >= (worst?.clear ?? Number.POSITIVE_INFINITY)) continue;
      const heading = Math.atan2(b.y - a.y, b.x - a.x);
      worst = { piece, at: lerp(chord[0], chord[1], 0.5), heading, clear, needs };
    }
    return worst === undefined ? [] : [worst];
  });
}

/** Clearance between an obstacle's box and a bend that goes round it, metres. */
const ROUND = 1.5;

/** One bend at each corner of what is in the way, when the way has no bends yet. */
function detourProposals(survey: Survey, element: LineElement, { bounds }: PlacedObstacle): readonly Proposal[] {
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
      idea: 'round',
      says: `Lead the line to ${obstacleWords(survey, leg.obstacle)} round it by the ${name} with a bend`,
      edit: (course) => changeLeg(course, leg.id, { bends: [{ x, y }] }),
    }));
}

/** A piece that is not ridden may be moved aside, square to the line, to either side. */
function asideProposals(survey: Survey, obstacle: PlacedObstacle, contact: Contact): readonly Proposal[] {
  const { id, passages } = obstacle.obstacle;
  if (passages.length > 0) return [];
  const { minX, minY, maxX, maxY } = obstacle.bounds;
  const by = contact.needs + Math.hypot(maxX - minX, maxY - minY);
  return [1, -1].map((side) => ({
    idea: 'aside',
    says: `Move ${obstacleWords(survey, id)} ${valueWords('length', by, survey.course.unit)} off the line`,
    edit: (course) =>
      shiftByKeys(course, [id], -side * by * Math.sin(contact.heading), side * by * Math.cos(contact.heading)),
  }));
}

function lineCrossesFindings(survey: Survey, element: LineElement, obstacle: PlacedObstacle): RawFinding[] {
  const met = contactsOf(survey, element, obstacle);
  const [nearest] = [...met].sort((a, b) => a.clear - b.clear);
  if (nearest === undefined) return [];
  const leg = survey.layout.ride.legs[element.leg];
  const { unit } = survey.course;
  const stands = met.some(({ piece }) => piece.figure.stands === 'standing');
  const way = linePartWords(survey, element.part, leg?.obstacle ?? '');
  const what = pieceWords(survey, nearest.piece.key);
  const needs = valueWords('length', nearest.needs, unit);
  const says =
    nearest.clear <= BAND_TOLERANCE
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
      keys: [...new Set([obstacle.obstacle.id, ...met.map(({ piece }) => piece.key)])],
      measured: nearest.clear,
      allowed: { least: nearest.needs },
      source: stands ? survey.horse.bodyWidth.source : survey.horse.stance.source,
      proposals: [...asideProposals(survey, obstacle, nearest), ...detourProposals(survey, element, obstacle)],
    },
  ];
}

export const lineCrosses: Check = {
  id: 'line-crosses',
  says: 'The line keeps off everything that is not being ridden.',
  because: 'A pole in the way that is not part of the obstacle is hit, or is taken for part of it.',
  weight: 'must',
  limits: [],
  findings(survey) {
    const found = survey.line.elements.flatMap((element) => {
      const { bounds } = chordsOf(element.path);
      const widest = halfWidth(survey.horse, element, 'standing');
      return survey.obstacles.flatMap((obstacle) =>
        boundsIntersect(bounds, obstacle.bounds, widest) ? lineCrossesFindings(survey, element, obstacle) : [],
      );
    });
    // One way may have several elements: the same crossing is reported once, where it is worst.
    const worst = new Map<string, RawFinding>();
    for (const each of found) {
      const known = worst.get(each.id);
      if (known === undefined || (each.measured ?? 0) < (known.measured ?? 0)) worst.set(each.id, each);
    }
    return [...worst.values()];
  },
};
