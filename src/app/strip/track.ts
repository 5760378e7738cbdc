import type { Band } from '../../core/checks/check.ts';
import { isInBand } from '../../core/checks/rulebooks/band.ts';
import { bandOf, limitsOf } from '../../core/checks/rulebooks/rulebooks.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit, Metres, Seconds } from '../../core/measure/quantity.ts';
import type { Gap } from '../../core/ride/line.ts';
import type { Survey } from '../../core/survey.ts';
import { stripWords } from '../../words/strip.ts';
import { terms } from '../../words/terms.ts';
import { obstacleTitle } from '../app-words.ts';

/** A leg on the unrolled line: the way from `from` to `over`, the obstacle from `over` to `to`. */
export interface StripLeg {
  readonly leg: number;
  readonly obstacle: string;
  readonly title: string;
  readonly from: Metres;
  readonly over: Metres;
  readonly to: Metres;
  readonly seconds: Seconds;
}

/**
 * A gap on the unrolled line, with the band that its gait asks for where the rule book has one. Gaps are judged along the
 * line, as the checks do.
 */
export interface StripGap {
  readonly index: number;
  readonly gap: Gap;
  readonly name: string;
  /** The whole multiple of the band that lies nearest, where multiples count. */
  readonly band?: Band;
  /** Inside; inside what is allowed but not what is recommended, or without an even landing; outside. */
  readonly fit: 'good' | 'poor' | 'off';
}

export function stripLegs(survey: Survey): readonly StripLeg[] {
  const { line, layout } = survey;
  return layout.ride.legs.flatMap((leg, index) => {
    const own = line.elements.filter((each) => each.leg === index && each.part !== 'finish');
    const [first] = own;
    const last = own.at(-1);
    const obstacle = layout.obstacles.find((each) => each.id === leg.obstacle);
    if (first === undefined || last === undefined || obstacle === undefined) return [];
    const over = own.find((each) => each.part === 'obstacle');
    return [
      {
        leg: index,
        obstacle: leg.obstacle,
        title: obstacleTitle(obstacle, layout),
        from: first.from,
        over: over?.from ?? last.from + last.length,
        to: last.from + last.length,
        seconds: line.clock.legs[index] ?? 0,
      },
    ];
  });
}

export function stripGaps(survey: Survey): readonly StripGap[] {
  const limits = limitsOf(survey.course);
  return survey.line.gaps.map((gap, index) => {
    const limit = limits[`gap.${gap.gait}`];
    const obstacle = survey.layout.obstacles.find((each) => each.id === gap.obstacle);
    const title = obstacle === undefined ? gap.obstacle : obstacleTitle(obstacle, survey.layout);
    const number = survey.line.gaps.filter((each, at) => each.leg === gap.leg && at <= index).length;
    const name = stripWords.gapOf(number, title);
    const better = limits[`gap.${gap.gait}.recommended`];
    if (limit === undefined) return { index, gap, name, fit: gap.landings.fits ? 'good' : 'poor' };
    const isAllowed = isInBand(bandOf(limit), gap.ridden);
    const isBest = gap.landings.fits && (better === undefined || isInBand(bandOf(better), gap.ridden));
    // The gauge shows the band that the value has yet to reach.
    const band = nearestMultiple(bandOf(isAllowed ? (better ?? limit) : limit), gap.ridden);
    return { index, gap, name, band, fit: isAllowed ? (isBest ? 'good' : 'poor') : 'off' };
  });
}

/** The band laid end to end as often as brings its middle nearest to the value. */
function nearestMultiple(band: Band, value: Metres): Band {
  const { least, most } = band;
  if (!band.multiples || least === undefined || most === undefined) return band;
  const times = Math.max(1, Math.round((2 * value) / (least + most)));
  return { ...band, least: times * least, most: times * most };
}

/** A smaller difference is not printed twice, metres. */
const TOLD_APART: Metres = 0.0254;

/** What a gap is and what it should be, in one sentence. */
export function gapSentence({ gap, name, band, fit }: StripGap, unit: LengthUnit): string {
  const bent = Math.abs(gap.ridden - gap.taped) > TOLD_APART ? stripWords.byTape(printLength(gap.ridden, unit)) : '';
  const asks = band === undefined ? '' : stripWords.gaitAsks(gap.gait, gapBandWords(band, unit));
  const grade = { good: '', poor: '', off: stripWords.outsideItsBand }[fit];
  const { count, each, fits } = gap.landings;
  const lands = fits
    ? stripWords.landingsEach(terms.landings(count), printLength(each, unit))
    : stripWords.noEvenLandingFits;
  return `${name}: ${printLength(gap.taped, unit)}${bent}${grade}.${asks}${lands}`;
}

export function gapBandWords({ least, most }: Band, unit: LengthUnit): string {
  if (least !== undefined && most !== undefined)
    return stripWords.range(printLength(least, unit), printLength(most, unit));
  if (least !== undefined) return stripWords.atLeast(printLength(least, unit));
  return most === undefined ? 'nothing' : stripWords.atMost(printLength(most, unit));
}

/** Where the measured value stands on a gauge that shows the band in its middle third; 0 … 1, held at the ends. */
export function onGauge({ least, most }: Band, value: Metres): number {
  if (least === undefined || most === undefined || most <= least) {
    const edge = least ?? most ?? value;
    return Math.min(1, Math.max(0, 0.5 + (value - edge) / (2 * edge || 1)));
  }
  return Math.min(1, Math.max(0, 1 / 3 + (value - least) / (3 * (most - least))));
}
