import { STOCK_HORSE } from '../../horses/horses.ts';
import { feet, inches, type Metres, wholeInches } from '../../measure/quantity.ts';
import { choiceValue, numberValue, type Values } from '../../pieces/params.ts';
import type { Piece } from '../../pieces/piece.ts';
import { lerp, type Point } from '../../plane/point.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { centredPieces, constraintOf, MARKER_BASE, pairs, pieceOfKind, poseStation, poseStationOn } from '../parts.ts';
import type { Passage, Station } from '../passage.ts';
import { bracketedLength, infeasible, lengthWords, roughLength } from '../refusal-words.ts';
import { BACKING_LIMITS } from '../traits.ts';
import { OFF_BASE, weaveRadius } from './serpentine.ts';

/**
 * A backing line around a marker: the angle at which it starts, seen from the marker, and how far round,
 * counter-clockwise positive. Radians.
 */
interface BackingArc {
  readonly about: Piece;
  readonly radius: Metres;
  readonly from: number;
  readonly by: number;
}

/** Stations on an arc are no further apart than this, so that the horse does not cut the corner: 100°. */
const MOST_ARC = (100 * Math.PI) / 180;
/** From the first marker to where the horse stands before and after. Estimate. */
const BEFORE: Metres = 1.5;

/** Backed along the arc: the horse faces against its travel. */
function backedStations({ about, radius, from, by }: BackingArc): Station[] {
  const steps = Math.ceil(Math.abs(by) / MOST_ARC);
  return Array.from({ length: steps }, (_, i) => {
    const at = from + (by * (i + 1)) / steps;
    const facing = at - (Math.sign(by) * Math.PI) / 2;
    const { x, y } = about.pose;
    return poseStationOn(about, { x: x + radius * Math.cos(at), y: y + radius * Math.sin(at), angle: facing }, 'back');
  });
}

/**
 * In between the lower two, out past one of them, around the third, in past the other and out again: arcs that join
 * smoothly.
 */
function trianglePassage(
  hand: 'left' | 'right',
  [left, right, top]: readonly [Piece, Piece, Piece],
  pitch: Metres,
): Passage {
  const [first, last, way] = hand === 'left' ? [left, right, 1] : [right, left, -1];
  const radius = pitch / 2;
  const middle = (a: Piece, b: Piece): Point => lerp(a.pose, b.pose, 0.5);
  const seen = (from: Piece, to: Point) => Math.atan2(to.y - from.pose.y, to.x - from.pose.x);
  const gate = middle(first, last);
  const before = { x: gate.x, y: gate.y - BEFORE };
  const [up, down] = [Math.PI / 2, -Math.PI / 2];
  const sixth = Math.PI / 3;
  const rounds: BackingArc[] = [
    { about: first, radius, from: seen(first, gate), by: way * sixth },
    { about: top, radius, from: seen(top, middle(first, top)), by: -way * 5 * sixth },
    { about: last, radius, from: seen(last, middle(top, last)), by: way * sixth },
  ];
  return {
    id: hand,
    title: `back in between two of the markers, round the third and out again, past the ${hand} one first`,
    gaits: ['walk'],
    stations: [
      poseStationOn(first, { ...before, angle: down }),
      poseStationOn(first, { ...gate, angle: down }, 'back'),
      ...rounds.flatMap(backedStations),
      poseStationOn(last, { ...before, angle: up }, 'back'),
    ],
  };
}

function rowPassages(row: readonly Piece[], pitch: Metres, aside: Metres): Passage[] {
  return ([1, -1] as const).flatMap((way) =>
    (['left', 'right'] as const).map((hand): Passage => {
      const order = way === 1 ? row : row.toReversed();
      const [first, last] = [order[0]?.id ?? '', order.at(-1)?.id ?? ''];
      const facing = way === 1 ? Math.PI : 0;
      // Left and right as one looks along the row, which is where the horse's tail goes.
      const side = way * (hand === 'left' ? aside : -aside);
      const off = way * Math.max(pitch, BEFORE);
      return {
        id: `${hand}${way === 1 ? '' : '-return'}`,
        title: `back through the markers, starting to the ${hand} of the first${way === 1 ? '' : ' at the other end'}`,
        gaits: ['walk'],
        stations: [
          poseStation(first, { x: -off, y: 0, angle: facing }),
          ...order.map(({ id }, i) => poseStation(id, { x: 0, y: i % 2 === 0 ? side : -side, angle: facing }, 'back')),
          poseStation(last, { x: off, y: 0, angle: facing }, 'back'),
        ],
      };
    }),
  );
}

/** The least room base to base, whole inches, in which a horse can back round these markers. */
function leastGap(values: Values, least: Metres): Metres {
  const base = numberValue(values, 'base');
  const aside = base / 2 + OFF_BASE;
  const pitch =
    choiceValue(values, 'shape') === 'triangle' ? 2 * least : Math.sqrt(8 * aside * least - (2 * aside) ** 2);
  return wholeInches(pitch - base);
}

/**
 * Three markers or more to weave through backwards. Frame: origin at the middle. A triangle has `marker-1` and `marker-2`
 * at −y, left and right, and `marker-3` at +y; a row runs along +x.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | apart | neighbours; in the triangle each two | gap |
 * | in-line | the first, the second; in a row each with the next | |
 * | parallel | in the triangle marker-2–marker-3 | |
 *
 * Least 36 in between barrels: American Mule Association rule 216; for markers nothing is published. 6 ft: estimate.
 */
export const backMarkers: ObstacleKind = {
  id: 'back-markers',
  title: 'Back round markers',
  alsoCalled: ['cones', 'barrels', 'triangle', 'back up', 'reverse', 'backing'],
  family: 'backing',
  about: 'Three markers or more to weave through backwards, in a triangle or a row.',
  params: {
    shape: {
      kind: 'choice',
      label: 'Shape',
      usual: 'triangle',
      options: { triangle: 'Three in a triangle', row: 'In a row' },
    },
    markers: { kind: 'count', label: 'Markers', usual: 3, least: 3, most: 6 },
    gap: {
      kind: 'length',
      label: 'Gap',
      says: 'From base to base.',
      usual: feet(6),
      least: inches(36),
      most: feet(16),
    },
    base: MARKER_BASE,
  },
  limits: BACKING_LIMITS,
  build(values) {
    const count = numberValue(values, 'markers');
    const gap = numberValue(values, 'gap');
    const base = numberValue(values, 'base');
    const inTriangle = choiceValue(values, 'shape') === 'triangle';
    const pitch = gap + base;
    const aside = base / 2 + OFF_BASE;
    const lineRadius = inTriangle ? pitch / 2 : weaveRadius(pitch, aside);
    const least = STOCK_HORSE.back.leastTurn.value;
    const row = inTriangle && count > 3 ? { shape: 'row' } : {};
    const tight = lineRadius < least ? { gap: leastGap({ ...values, ...row }, least) } : {};
    if ('shape' in row || 'gap' in tight) {
      const reasons = [
        ...('shape' in row ? [`A triangle has three markers; ${count} stand in a row.`] : []),
        ...('gap' in tight
          ? [
              `Markers ${lengthWords(gap)} apart bend the line on a radius of ${roughLength(lineRadius)}: too tight to back ${bracketedLength(least)}. ${lengthWords(tight.gap)} from base to base makes it right.`,
            ]
          : []),
      ];
      return infeasible(reasons.join(' '), { ...row, ...tight }, { lineRadius });
    }
    const at = (x: number, y: number, i: number) =>
      pieceOfKind(`marker-${i + 1}`, 'marker', { base }, { x, y, angle: 0 });
    const apart = (a: Piece, b: Piece) =>
      constraintOf(`gap-${a.id.slice(7)}-${b.id.slice(7)}`, 'apart', [{ piece: a.id }, { piece: b.id }], { hold: gap });
    const inLine = (a: Piece, b: Piece) =>
      constraintOf(`line-${a.id.slice(7)}`, 'in-line', [{ piece: a.id }, { piece: b.id }]);
    const facts = { pitch, lineRadius };
    if (!inTriangle) {
      const pieces = Array.from({ length: count }, (_, i) => at((i - (count - 1) / 2) * pitch, 0, i));
      const constraints = pairs(pieces).flatMap(([a, b]) => [apart(a, b), inLine(a, b)]);
      return { kind: 'built', pieces, constraints, passages: rowPassages(pieces, pitch, aside), facts };
    }
    const height = (pitch * Math.sqrt(3)) / 2;
    const pieces = centredPieces([at(-pitch / 2, 0, 0), at(pitch / 2, 0, 1), at(0, height, 2)]);
    const [left, right, top] = pieces;
    if (left === undefined || right === undefined || top === undefined) throw new Error('back-markers: three stand');
    const constraints = [
      apart(left, right),
      apart(right, top),
      apart(left, top),
      inLine(left, right),
      constraintOf('parallel', 'parallel', [{ piece: right.id }, { piece: top.id }]),
    ];
    const passages = (['left', 'right'] as const).map((hand) => trianglePassage(hand, [left, right, top], pitch));
    return { kind: 'built', pieces, constraints, passages, facts };
  },
};
