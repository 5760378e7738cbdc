import { INCH, inches, wholeInches } from '../../measure/quantity.ts';
import { choiceValue, numberValue, type Values } from '../../pieces/params.ts';
import type { ObstacleKind } from '../obstacle.ts';
import { gaitParam, gapForGait } from '../parts.ts';
import { infeasible, lengthWords } from '../refusal-words.ts';
import { GAP_ITSELF } from '../traits.ts';
import { buildRun, ROW_PARAMS } from './run.ts';

/**
 * A run of poles that rest in cups at one end or both. Frame and held: as a run's. A pole's start is its −y end, on the
 * right hand of a horse that goes forward.
 *
 * Height: from the ground to the highest point (EWU § 7404). Several raised walk-overs are at most 10 in high (American
 * Mule Association rule 216), lope-overs 10 in at their middle (trade press); 12 in and 30 cm elsewhere. Usual 8 in:
 * estimate. Usual gap 24 in: walk-overs of 20 to 24 in (American Mule Association rule 216).
 */
export const raisedRun: ObstacleKind = {
  id: 'raised-run',
  title: 'Raised run',
  alsoCalled: ['cavaletti', 'cavalletti', 'elevated', 'lifted'],
  family: 'poles',
  about: 'A run of poles raised at both ends, at one, or at one and the other by turns.',
  params: {
    ...ROW_PARAMS,
    gap: { ...ROW_PARAMS.gap, usual: inches(24) },
    raised: {
      kind: 'choice',
      label: 'Raised',
      usual: 'alternate',
      options: { alternate: 'One end, by turns', same: 'The same end', both: 'Both ends' },
    },
    height: {
      kind: 'length',
      label: 'Height',
      says: 'From the ground to the top of a raised end.',
      usual: inches(8),
      least: inches(3),
      most: inches(24),
    },
    gait: gaitParam('walk'),
  },
  gapParam: GAP_ITSELF,
  usual: gapForGait,
  crossedTogether: true,
  build(values) {
    const height = numberValue(values, 'height');
    const thickness = numberValue(values, 'thickness');
    const lifted = height - thickness;
    if (lifted < INCH - 1e-9) {
      const nearest = wholeInches(thickness + INCH);
      const why = `A pole ${lengthWords(thickness)} thick with its top at ${lengthWords(height)} lies on the ground: raised, it comes to ${lengthWords(nearest)} or more.`;
      return infeasible(why, { height: nearest });
    }
    const how = choiceValue(values, 'raised');
    const ends = (i: number): Values => ({
      raisedStart: how === 'both' || (how === 'alternate' && i % 2 === 1) ? lifted : 0,
      raisedEnd: how === 'both' || how === 'same' || (how === 'alternate' && i % 2 === 0) ? lifted : 0,
    });
    return buildRun(values, ends);
  },
};
