import type { Band, Limit } from '../../checks/check.ts';
import { BAND_TOLERANCE, isInBand } from '../../checks/rulebooks/band.ts';
import { bandOf, limitsOf } from '../../checks/rulebooks/rulebooks.ts';
import { obstacleOf } from '../../course/ids.ts';
import type { Gait } from '../../horses/horse.ts';
import { INCH, type LengthUnit, type Metres } from '../../measure/quantity.ts';
import { obstacleKind } from '../../obstacles/obstacles.ts';
import type { Gap } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import { observedOn } from '../ground.ts';
import { type MeasuredGap, measuredGaps } from '../plan/measured-gaps.ts';
import { TAPE_STEP } from '../plan/rounded-build.ts';
import { type Adjustment, observedAsBuilt } from './adjust.ts';
import { groundOf } from './adjust-equations.ts';

/** From the least to the most that a gap may measure, metres. */
export interface GapBand {
  readonly least: Metres;
  readonly most: Metres;
  /** The limit that it comes from; absent: it is the planned gap, an inch more or less. */
  readonly limit?: Limit;
}

/** A gap between poles that lie, and where it should lie. */
export interface AsBuiltGap {
  readonly keys: readonly [string, string];
  /** Where along its poles it is measured, 0 … 1. */
  readonly at: readonly [number, number];
  /** Present where it lies on the line of travel: it is measured along the line then, else by a straight tape. */
  readonly gait?: Gait;
  readonly plan: Metres;
  readonly built: Metres;
  /** Standard error of a straight tape between its poles, by the readings; absent: they do not tell, and one is taken as drawn. */
  readonly sigma?: Metres;
  readonly band: GapBand;
}

/** Where no limit says more, a gap may differ by this from what was planned. Estimate: what a crew tapes again. */
const AS_PLANNED: Metres = INCH;

/** The one of a band and its whole multiples that holds the value; undefined where none does. */
function bandAround(band: Band, value: Metres): GapBand | undefined {
  if (!isInBand(band, value)) return undefined;
  const { least = 0, most = Number.POSITIVE_INFINITY, multiples } = band;
  if (!multiples) return { least, most };
  for (let times = 1; times * least <= value + BAND_TOLERANCE; times += 1) {
    if (value <= times * most + BAND_TOLERANCE) return { least: times * least, most: times * most };
  }
  return undefined;
}

/** The limit of the gap between the inner ends of poles that spread, where the kind of their obstacle declares it. */
const INNER = 'fan.inner-gap';

/** The names of the limits that a gap has to keep, the closest first. */
function limitNames(
  { layout }: Survey,
  { keys, at, gait }: Pick<AsBuiltGap, 'keys' | 'at' | 'gait'>,
): readonly string[] {
  if (gait !== undefined) return [`gap.${gait}.recommended`, `gap.${gait}`];
  const owner = layout.obstacles.find(({ id }) => id === obstacleOf(keys[0]));
  const isInner = at[0] === 0 && at[1] === 0 && obstacleKind(owner?.kind ?? '')?.limits?.includes(INNER) === true;
  return isInner ? [INNER] : [];
}

/** The band of a gap that was planned so long: what the book recommends or allows, else near the plan. */
export function bandOfGap(survey: Survey, plan: Metres, gap: Pick<AsBuiltGap, 'keys' | 'at' | 'gait'>): GapBand {
  const limits = limitsOf(survey.course);
  const named = limitNames(survey, gap).map((name) => limits[name]);
  for (const limit of named) {
    const band = limit === undefined ? undefined : bandAround(bandOf(limit), plan);
    if (limit === undefined || band === undefined) continue;
    // Where a book says the least only, the plan says the most.
    return { least: band.least, most: Number.isFinite(band.most) ? band.most : plan + AS_PLANNED, limit };
  }
  return { least: plan - AS_PLANNED, most: plan + AS_PLANNED };
}

function isSameGap(gap: Gap, keys: readonly string[]): boolean {
  return gap.keys.every((key) => keys.includes(key));
}

/** The gap on the line between the same poles in the same leg. */
function sameGap({ line }: Survey, { keys, leg }: Pick<Gap, 'keys' | 'leg'>): Gap | undefined {
  return line.gaps.find((each) => each.leg === leg && isSameGap(each, keys));
}

/** How far a value lies outside of its band; 0 where a tape in this unit would not show it. Metres. */
export function outsideBand({ least, most }: GapBand, value: Metres, unit: LengthUnit): Metres {
  const off = Math.max(least - value, value - most, 0);
  return off <= TAPE_STEP[unit] ? 0 : off;
}

/**
 * The gaps of the planned survey with a pole that was taped, measured in the survey as built: on the line of travel along it,
 * and by tape where constraints hold them elsewhere.
 */
export function asBuiltGaps(planned: Survey, built: Survey, adjustment: Adjustment): readonly AsBuiltGap[] {
  const isTouched = ({ keys }: Pick<MeasuredGap, 'keys'>): boolean => keys.some((key) => adjustment.pieces.has(key));
  const sureness = (gap: MeasuredGap | undefined): Pick<AsBuiltGap, 'sigma'> => {
    const told = gap === undefined ? undefined : observedAsBuilt(planned, adjustment, gap.of);
    return told === undefined ? {} : { sigma: told.sigma };
  };
  const measured = measuredGaps(planned).filter(isTouched);
  const ridden = planned.line.gaps.filter(isTouched).flatMap((gap): readonly AsBuiltGap[] => {
    const now = sameGap(built, gap);
    const like = measured.find((each) => each.isRidden && isSameGap(gap, each.keys));
    if (now === undefined) return [];
    const { keys, gait, ridden: plan } = gap;
    const at = like === undefined ? ([0.5, 0.5] as const) : inOrder(like, keys);
    const band = bandOfGap(planned, plan, { keys, at, gait });
    return [{ keys, at, gait, plan, built: now.ridden, ...sureness(like), band }];
  });
  const held = measured.flatMap((gap): readonly AsBuiltGap[] => {
    if (gap.isRidden) return [];
    const { keys, at, of } = gap;
    const plan = observedOn(groundOf(planned), of).value;
    const now = observedOn(groundOf(built), of).value;
    return [{ keys, at, plan, built: now, ...sureness(gap), band: bandOfGap(planned, plan, { keys, at }) }];
  });
  return [...ridden, ...held];
}

/** The places of a measured gap in the order of these keys. */
function inOrder({ keys, at }: MeasuredGap, order: readonly [string, string]): readonly [number, number] {
  return keys[0] === order[0] ? at : [at[1], at[0]];
}
