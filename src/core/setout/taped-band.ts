import { isInBand } from '../checks/rulebooks/band.ts';
import { bandOf, limitsOf } from '../checks/rulebooks/rulebooks.ts';
import { INCH, type Metres } from '../measure/quantity.ts';
import type { Gap } from '../ride/line.ts';
import type { Survey } from '../survey.ts';
import type { GapError } from './setout.ts';

/** Between which readings a gap must stay, by a straight tape, metres. */
export interface TapedBand {
  readonly least: Metres;
  readonly most: Metres;
  /** `limit`: what the rule book or practice asks for; `plan`: nothing is asked, so it is kept near what was drawn. */
  readonly from: 'limit' | 'plan';
}

/** Where nothing is asked of a gap it is kept this near to the plan, metres. Estimate: what a crew tapes again. */
const NEAR: Metres = INCH;

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
  const near: TapedBand = { least: gap.plan - NEAR, most: gap.plan + NEAR, from: 'plan' };
  const ridden = riddenGap(survey, gap);
  if (ridden === undefined) return near;
  const limits = limitsOf(survey.course);
  for (const limit of [limits[`gap.${ridden.gait}.recommended`], limits[`gap.${ridden.gait}`]]) {
    if (limit === undefined) continue;
    const band = bandOf(limit);
    const { least, most, multiples } = band;
    if (least === undefined || most === undefined || !isInBand(band, ridden.ridden)) continue;
    const times = multiples ? Math.max(1, Math.round(ridden.ridden / ((least + most) / 2))) : 1;
    const bySlack = gap.plan - ridden.ridden;
    return { least: times * least + bySlack, most: times * most + bySlack, from: 'limit' };
  }
  return near;
}
