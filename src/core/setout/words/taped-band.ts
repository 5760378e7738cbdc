import type { Metres } from '../../measure/quantity.ts';
import type { Gap } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import { bandOfGap } from '../built/as-built-gaps.ts';
import type { GapError } from '../setout.ts';

/** Between which readings a gap must stay, by a straight tape, metres. */
export interface TapedBand {
  readonly least: Metres;
  readonly most: Metres;
  /** `limit`: what the rule book or practice asks for; `plan`: nothing is asked, so it is kept near what was drawn. */
  readonly from: 'limit' | 'plan';
}

/** The gap on the line of travel that is taped between these poles; undefined: nobody rides over it. */
function riddenGap({ line }: Survey, { keys, plan, isRidden }: GapError): Gap | undefined {
  if (!isRidden) return undefined;
  const own = line.gaps.filter((each) => each.keys.every((key) => keys.includes(key)));
  return own.toSorted((a, b) => Math.abs(a.taped - plan) - Math.abs(b.taped - plan))[0];
}

/**
 * The band of a gap as it is taped. Books ask for a length along the line, so on a curve the band is moved by what the
 * tape differs from the line there.
 */
export function tapedBand(survey: Survey, gap: GapError): TapedBand {
  const ridden = riddenGap(survey, gap);
  const { keys, at, plan: taped } = gap;
  const plan = ridden?.ridden ?? taped;
  const band = bandOfGap(survey, plan, { keys, at, ...(ridden !== undefined && { gait: ridden.gait }) });
  return {
    least: band.least + taped - plan,
    most: band.most + taped - plan,
    from: band.limit === undefined ? 'plan' : 'limit',
  };
}
