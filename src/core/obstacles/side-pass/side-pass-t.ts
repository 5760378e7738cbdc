import { feet } from '../../measure/quantity.ts';
import { numberValue } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { centredPieces, constraintOf, POLE_PARAMS, pieceOfKind } from '../parts.ts';
import type { Station } from '../passage.ts';
import { SIDE_PASSING_LIMITS } from '../traits.ts';
import { sidePassages } from './side-pass.ts';
import { cornerPassages } from './side-pass-corner.ts';

/** What is side passed: the stem, one half of the bar, or all of it. */
function partOfBars(stations: readonly Station[]): string {
  const on = stations.flatMap((each) => (each.kind === 'reach' ? [each] : []));
  if (on.at(-1)?.piece === 'stem') return 'its stem';
  const places = on.filter(({ piece }) => piece === 'bar').map(({ pose }) => pose.x);
  if (places.some((x) => x < 0) && places.some((x) => x > 0)) return 'its whole bar';
  return `the ${places.some((x) => x < 0) ? 'left' : 'right'} half of its bar`;
}

/**
 * A pole with another square against its middle. Frame: origin at the middle of what they cover; `bar` along +x, `stem`
 * from it towards −y.
 *
 * | held | grips | hold |
 * |---|---|---|
 * | touching, side −1 | stem at 0, bar | |
 * | square | both | |
 * | on-line | stem, the middle of bar | |
 *
 * Side passed in both directions: New York 4-H. A 12 ft bar and an 8 ft stem: estimate.
 */
export const sidePassT: ObstacleKind = {
  id: 'side-pass-t',
  title: 'Side pass T',
  alsoCalled: ['sidepass', 'lateral'],
  family: 'side-passing',
  about: 'Side pass along the bar to its middle, turn, and side pass down the stem; or over the whole bar.',
  words: { noun: 'T', part: partOfBars },
  params: {
    length: { ...POLE_PARAMS.length, label: 'Bar' },
    stemLength: { ...POLE_PARAMS.length, label: 'Stem', usual: feet(8) },
    thickness: POLE_PARAMS.thickness,
  },
  limits: SIDE_PASSING_LIMITS,
  build(values) {
    const length = numberValue(values, 'length');
    const stemLength = numberValue(values, 'stemLength');
    const thickness = numberValue(values, 'thickness');
    const down = -Math.PI / 2;
    const reach = thickness / 2 + stemLength;
    const pieces = centredPieces([
      pieceOfKind('bar', 'pole', { length, thickness }, { x: 0, y: 0, angle: 0 }),
      pieceOfKind('stem', 'pole', { length: stemLength, thickness }, { x: 0, y: -reach + stemLength / 2, angle: down }),
    ]);
    const [bar, stem] = pieces;
    if (bar === undefined || stem === undefined) throw new Error('side-pass-t: it has two poles');
    const left = { pole: bar, heading: Math.PI, length: length / 2 };
    const right = { pole: bar, heading: 0, length: length / 2 };
    const foot = { pole: stem, heading: down, length: reach };
    const named = { angle: Math.PI / 2 };
    const passages = [
      ...cornerPassages(bar.pose, [left, foot], { ...named, what: 'left half of the T and its stem', id: 'left-' }),
      ...cornerPassages(bar.pose, [foot, right], {
        ...named,
        what: 'right half of the T and its stem',
        id: 'right-',
      }),
      ...sidePassages('bar', { length, y: 0, what: 'over the whole bar of the T' }).map((passage) => ({
        ...passage,
        id: `bar-${passage.id}`,
      })),
    ];
    const constraints = [
      constraintOf('stem', 'touching', [{ piece: 'stem', at: 0 }, { piece: 'bar' }], { side: -1 }),
      constraintOf('square', 'square', [{ piece: 'bar' }, { piece: 'stem' }]),
      constraintOf('middle', 'on-line', [{ piece: 'stem' }, { piece: 'bar' }]),
    ];
    return { kind: 'built', pieces, constraints, passages, facts: { length } };
  },
};
