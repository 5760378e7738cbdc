import { feet, type Metres, wholeInches } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import {
  chosenGait,
  constraintOf,
  gaitParam,
  gaitsOn,
  MARKER_BASE,
  pairs,
  pieceOfKind,
  poseStation,
  stockMinTurnRadius,
  stockTightestTurnRadius,
} from '../parts.ts';
import type { Passage } from '../passage.ts';
import { bracketedLength, infeasible, lengthWords, roughLength } from '../refusal-words.ts';

/** From a marker's base to the line beside it: half a body and a leg. Estimate. */
export const OFF_BASE: Metres = 0.6;

/** The radius of two arcs that carry the line from one side of a marker to the other side of the next, `pitch` on. */
export function weaveRadius(pitch: Metres, aside: Metres): Metres {
  return (pitch ** 2 + (2 * aside) ** 2) / (8 * aside);
}

/**
 * Markers in a row to weave through. Frame: origin at the middle of the row, markers along +x, marker-1 at −x.
 *
 * | held between neighbours | grips | hold |
 * |---|---|---|
 * | apart | both | gap |
 * | in-line | the first, the second | |
 *
 * Usual: 10 ft base to base for a jog (American Mule Association rule 216); four markers: common practice, no source.
 */
export const serpentine: ObstacleKind = {
  id: 'serpentine',
  title: 'Marker serpentine',
  alsoCalled: ['slalom', 'cones', 'weave', 'pylons', 'bending'],
  family: 'markers',
  about: 'Markers in a row to weave through, bending left and right by turns.',
  params: {
    markers: { kind: 'count', label: 'Markers', usual: 4, least: 2, most: 10 },
    gap: {
      kind: 'length',
      label: 'Gap',
      says: 'From base to base.',
      usual: feet(10),
      least: feet(3),
      most: feet(40),
    },
    base: MARKER_BASE,
    gait: gaitParam('jog'),
  },
  limits: ['serpentine.walk', 'serpentine.jog', 'serpentine.markers'],
  build(values) {
    const count = numberValue(values, 'markers');
    const gap = numberValue(values, 'gap');
    const base = numberValue(values, 'base');
    const gait = chosenGait(values);
    const aside = base / 2 + OFF_BASE;
    const pitch = gap + base;
    const lineRadius = weaveRadius(pitch, aside);
    const least = stockMinTurnRadius(gait);
    // A book for led horses prints serpentines that are too tight to ride: whether this horse can is for the checks.
    if (lineRadius < stockTightestTurnRadius(gait)) {
      const nearest = wholeInches(Math.sqrt(8 * aside * least - (2 * aside) ** 2) - base);
      const why = `Markers ${lengthWords(gap)} apart bend the line on a radius of ${roughLength(lineRadius)}: too tight to ${gait} ${bracketedLength(least)}.`;
      return infeasible(
        `${why} ${lengthWords(nearest)} from base to base makes it right.`,
        { gap: nearest },
        { lineRadius },
      );
    }
    const pieces = Array.from({ length: count }, (_, i) =>
      pieceOfKind(`marker-${i + 1}`, 'marker', { base }, { x: (i - (count - 1) / 2) * pitch, y: 0, angle: 0 }),
    );
    const constraints = pairs(pieces).flatMap(([a, b], i) => [
      constraintOf(`gap-${i + 1}`, 'apart', [{ piece: a.id }, { piece: b.id }], { hold: gap }),
      constraintOf(`line-${i + 1}`, 'in-line', [{ piece: a.id }, { piece: b.id }]),
    ]);
    const gaits = gaitsOn(values, lineRadius);
    const passages = ([1, -1] as const).flatMap((way) =>
      (['left', 'right'] as const).map((hand): Passage => {
        const row = way === 1 ? pieces : pieces.toReversed();
        const first = way * (hand === 'left' ? aside : -aside);
        return {
          id: `${hand}${way === 1 ? '' : '-return'}`,
          title: `weave through the markers, starting to the ${hand} of the first${way === 1 ? '' : ' at the other end'}`,
          gaits,
          stations: row.map(({ id }, i) =>
            poseStation(id, { x: 0, y: i % 2 === 0 ? first : -first, angle: way === 1 ? 0 : Math.PI }),
          ),
        };
      }),
    );
    return { kind: 'built', pieces, constraints, passages, facts: { pitch, lineRadius } };
  },
};
