import { feet, INCH, inches } from '../../measure/quantity.ts';
import { numberValue, type Values } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import {
  chosenGait,
  constraintOf,
  crossStation,
  gaitParam,
  gaitsOn,
  MARKER_BASE,
  POLE_PARAMS,
  pairs,
  pieceOfKind,
  slowerGaitHint,
  stockMinTurnRadius,
} from '../parts.ts';
import { bracketedLength, infeasible, lengthWords, roughLength } from '../refusal-words.ts';

interface SpokeShape {
  readonly [fact: string]: number;
  /** From the middle of the marker to the near ends, metres. */
  readonly innerRadius: number;
  readonly lineRadius: number;
  /** On the line, centre to centre between neighbours. */
  readonly arc: number;
  readonly chord: number;
}

const FULL_CIRCLE = 2 * Math.PI;

/** From arm to arm: a whole wheel closes on its first arm, a part of one has an arm at either end. */
function armAngle(values: Values): number {
  const spread = numberValue(values, 'spread');
  const arms = numberValue(values, 'arms');
  return isFullCircle(spread) ? FULL_CIRCLE / arms : spread / (arms - 1);
}

function isFullCircle(spread: number): boolean {
  return spread >= FULL_CIRCLE - 1e-9;
}

function spokeShape(values: Values): SpokeShape {
  const turn = armAngle(values);
  const innerRadius = numberValue(values, 'markerBase') / 2 + numberValue(values, 'clear');
  const lineRadius = innerRadius + numberValue(values, 'line') * numberValue(values, 'length');
  return { innerRadius, lineRadius, arc: lineRadius * turn, chord: 2 * lineRadius * Math.sin(turn / 2) };
}

function spokeFault(values: Values, shape: SpokeShape): string | undefined {
  const arms = numberValue(values, 'arms');
  const half = armAngle(values) / 2;
  // The near corners of neighbours meet on the line half-way between them.
  if (shape.innerRadius * Math.sin(half) < (numberValue(values, 'thickness') / 2) * Math.cos(half)) {
    return `${arms} poles ${lengthWords(numberValue(values, 'clear'))} clear of the marker lie on one another at their near ends.`;
  }
  const gait = chosenGait(values);
  const least = stockMinTurnRadius(gait);
  if (shape.lineRadius < least) {
    return `The line turns on a radius of ${roughLength(shape.lineRadius)}: too tight to ${gait} ${bracketedLength(least)}.`;
  }
  return undefined;
}

/** Why a part of a wheel is none: its last arm comes nearer to its first than any other two. */
function closingFault(values: Values): string | undefined {
  const spread = numberValue(values, 'spread');
  if (isFullCircle(spread) || FULL_CIRCLE - spread >= armAngle(values) - 1e-9) return undefined;
  const shown = Math.round((spread * 180) / Math.PI);
  return `A wheel of ${shown}° has its last pole nearer to its first than the others are to each other: make it whole, 360°.`;
}

/** The smallest clear distance in whole inches with which the wheel can be ridden. */
function nearestClear(values: Values, most: number): number | undefined {
  for (let n = Math.ceil(numberValue(values, 'clear') / INCH - 1e-9); inches(n) <= most; n++) {
    const tried = { ...values, clear: inches(n) };
    if (spokeFault(tried, spokeShape(tried)) === undefined) return inches(n);
  }
  return undefined;
}

const CLEAR_MOST = feet(12);

/**
 * Poles like the spokes of a wheel round a square-based marker. Frame: origin at the marker, arm-1 along +x, also in a part of a wheel, counted
 * counter-clockwise, near ends at fraction 0.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | marker-clear | marker, each arm at 0 | clear |
 * | on-line | each arm, marker | |
 * | angle-between, side 1 | neighbours, not the last with the first | a full turn / arms; in a part of a wheel the spread / (arms − 1) |
 *
 * Usual: common practice, no source (12 ft poles 2 ft clear of a 1 ft base, the line 3 ft in from the outer ends: about
 * 18 ft from pole to pole). Half a wheel with a pole every 45° is a published example.
 */
export const spoke: ObstacleKind = {
  id: 'spoke',
  title: 'Spoke',
  alsoCalled: ['wagon wheel', 'pinwheel', 'star', 'circle'],
  family: 'poles',
  about: 'A wheel of poles about a marker, ridden round on a circle.',
  words: { noun: 'spoke', ridden: 'around {}' },
  params: {
    // With a larger value, a horse that comes to the line at the near ends has to cross an arm before the first.
    arms: { kind: 'count', label: 'Poles', usual: 4, least: 3, most: 8 },
    ...POLE_PARAMS,
    markerBase: MARKER_BASE,
    clear: {
      kind: 'length',
      label: 'Clear of the marker',
      says: 'From its base to the near end of each pole.',
      usual: feet(2),
      least: inches(6),
      most: CLEAR_MOST,
    },
    line: {
      kind: 'fraction',
      label: 'Line at',
      says: 'How far along the poles the horse goes, from their near ends.',
      usual: 0.75,
      // Nearer to the marker than the middle of the poles a horse cannot get in between them.
      least: 0.5,
      most: 1,
    },
    spread: {
      kind: 'angle',
      label: 'Spread',
      later: true,
      says: 'From the first pole to the last; 360° is a whole wheel.',
      usual: FULL_CIRCLE,
      least: Math.PI / 3,
      most: FULL_CIRCLE,
    },
    gait: gaitParam('jog'),
  },
  limits: ['marker.clear'],
  // The gap is a chord between two arms: as it widens, all arms move out by half of it over the sine of half their angle.
  gapParam: {
    param: 'clear',
    value: (values, taped, wanted) =>
      numberValue(values, 'clear') + (wanted - taped) / (2 * Math.sin(armAngle(values) / 2)),
  },
  crossedTogether: true,
  build(values) {
    const shape = spokeShape(values);
    const unclosed = closingFault(values);
    const whole = unclosed === undefined ? {} : { spread: FULL_CIRCLE };
    const closed = { ...values, ...whole };
    const why = spokeFault(closed, spokeShape(closed));
    if (why !== undefined) {
      const clear = nearestClear(closed, CLEAR_MOST);
      const reason = unclosed === undefined ? why : `${unclosed} ${why}`;
      if (clear === undefined) return infeasible(reason, undefined, shape);
      const slower = slowerGaitHint(closed, (tried) => spokeFault(tried, spokeShape(tried)) === undefined);
      const cure = `Laid ${lengthWords(clear)} clear of the marker it is right.`;
      return infeasible(`${reason} ${cure}${slower}`, { ...whole, clear }, shape);
    }
    if (unclosed !== undefined) return infeasible(unclosed, whole, shape);
    const arms = numberValue(values, 'arms');
    const turn = armAngle(values);
    const length = numberValue(values, 'length');
    const line = numberValue(values, 'line');
    const out = shape.innerRadius + length / 2;
    const marker = pieceOfKind(
      'marker',
      'marker',
      { base: numberValue(values, 'markerBase') },
      { x: 0, y: 0, angle: 0 },
    );
    const poles = Array.from({ length: arms }, (_, i) => {
      const angle = i * turn;
      const pose = { x: out * Math.cos(angle), y: out * Math.sin(angle), angle };
      return pieceOfKind(`arm-${i + 1}`, 'pole', { length, thickness: numberValue(values, 'thickness') }, pose);
    });
    const grips = (...pieces: readonly string[]) => pieces.map((piece) => ({ piece }));
    const constraints = [
      ...poles.flatMap(({ id }, i) => [
        constraintOf(`clear-${i + 1}`, 'marker-clear', [{ piece: marker.id }, { piece: id, at: 0 }], {
          hold: numberValue(values, 'clear'),
        }),
        constraintOf(`aim-${i + 1}`, 'on-line', grips(id, marker.id)),
      ]),
      ...pairs(poles).map(([a, b], i) =>
        constraintOf(`angle-${i + 1}`, 'angle-between', grips(a.id, b.id), { hold: turn, side: 1 }),
      ),
    ];
    const gaits = gaitsOn(values, shape.lineRadius);
    return {
      kind: 'built',
      pieces: [marker, ...poles],
      constraints,
      passages: [
        {
          id: 'left',
          title: 'round the spoke to the left',
          gaits,
          stations: poles.map(({ id }) => crossStation(id, line, 1)),
        },
        {
          id: 'right',
          title: 'round the spoke to the right',
          gaits,
          stations: poles.toReversed().map(({ id }) => crossStation(id, line, -1)),
        },
      ],
      facts: shape,
    };
  },
};
