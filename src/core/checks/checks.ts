import type { Survey } from '../survey.ts';
import { backRaisedWidth, backWidth } from './back-width.ts';
import { boxSide } from './box-side.ts';
import { breaks } from './breaks.ts';
import { bridgeLength, bridgeWidth } from './bridge-size.ts';
import type { Check, Finding, Found, Remedy, Weight } from './check.ts';
import { classSize, slowObstacle } from './class-size.ts';
import { fanInnerGap } from './fan-inner-gap.ts';
import { gapBand } from './gap-band.ts';
import { gateOpening } from './gate-opening.ts';
import { landings } from './landings.ts';
import { lineCrosses } from './line-crosses.ts';
import { lineInArena } from './line-in-arena.ts';
import { markerClear } from './marker-clear.ts';
import { obstacleCount } from './obstacle-count.ts';
import { obstacleRoom } from './obstacle-room.ts';
import { obstacleTime } from './obstacle-time.ts';
import { outside } from './outside.ts';
import { overlap } from './overlap.ts';
import { poleCount } from './pole-count.ts';
import { backRaisedHeight, raisedLope, raisedWalkSeveral, raisedWalkSingle, sidePassHeight } from './raised-height.ts';
import { offered } from './remedy.ts';
import { limitsOf } from './rulebooks.ts';
import { serpentineSpacing } from './serpentine-spacing.ts';
import { sidePassRoom } from './side-pass-room.ts';
import { skew } from './skew.ts';
import { truck } from './truck.ts';
import { turn } from './turn.ts';
import { waterBoxLength, waterBoxWidth } from './water-box-size.ts';

/** Every check. A new one is one file and one line here. */
export const CHECKS: readonly Check[] = [
  outside,
  overlap,
  breaks,
  lineInArena,
  lineCrosses,
  turn,
  gapBand,
  landings,
  skew,
  truck,
  backWidth,
  backRaisedWidth,
  backRaisedHeight,
  sidePassRoom,
  sidePassHeight,
  serpentineSpacing,
  boxSide,
  gateOpening,
  bridgeWidth,
  bridgeLength,
  waterBoxWidth,
  waterBoxLength,
  raisedWalkSeveral,
  raisedWalkSingle,
  raisedLope,
  fanInnerGap,
  markerClear,
  obstacleCount,
  poleCount,
  obstacleRoom,
  obstacleTime,
  classSize,
  slowObstacle,
];

const ORDER: Readonly<Record<Weight, number>> = { must: 0, should: 1, note: 2 };

/** What belongs to no leg comes before the first. */
function byWeightThenLeg(a: Found, b: Found): number {
  return ORDER[a.weight] - ORDER[b.weight] || (a.leg ?? -1) - (b.leg ?? -1) || (a.id < b.id ? -1 : 1);
}

/** What the checks find, fixes untried, the heaviest first and then in the order of the go. */
function worked(survey: Survey): readonly Found[] {
  const limits = limitsOf(survey.course);
  const found = new Map<string, Found>();
  for (const check of CHECKS) {
    // An obstacle that is ridden twice has the same fault twice: it is told once.
    for (const each of check.run(survey, limits)) if (!found.has(each.id)) found.set(each.id, each);
  }
  return [...found.values()].sort(byWeightThenLeg);
}

const founds = new WeakMap<Survey, readonly Found[]>();

function foundOf(survey: Survey): readonly Found[] {
  const known = founds.get(survey);
  if (known !== undefined) return known;
  const found = worked(survey);
  founds.set(survey, found);
  return found;
}

/** The finding: its fixes are tried when somebody first looks at them, for each costs a survey of its own. */
function findingOf(survey: Survey, found: Found): Finding {
  const { proposals, ...told } = found;
  let tried: readonly Remedy[] | undefined;
  return {
    ...told,
    get remedies() {
      tried ??= proposals.length === 0 ? [] : offered(survey, found, foundOf);
      return tried;
    },
  };
}

const findings = new WeakMap<Survey, readonly Finding[]>();

/** Everything that the checks have to say about a survey: musts first, then shoulds and notes, each by leg. */
export function findingsOf(survey: Survey): readonly Finding[] {
  const known = findings.get(survey);
  if (known !== undefined) return known;
  const told = foundOf(survey).map((found) => findingOf(survey, found));
  findings.set(survey, told);
  return told;
}

/** The limits that the book in force does not set, with the check that would have asked: "this book does not say". */
export function silent(survey: Survey): readonly { readonly check: Check; readonly limit: string }[] {
  const limits = limitsOf(survey.course);
  return CHECKS.flatMap((check) =>
    check.limits.filter((name) => limits[name] === undefined).map((limit) => ({ check, limit })),
  );
}
