import type { Survey } from '../survey.ts';
import { alignment } from './alignment.ts';
import { backClearance } from './back-clearance.ts';
import { backBarrelWidth, backRaisedWidth, backWidth } from './back-width.ts';
import { boxSide, squarePole } from './box-side.ts';
import { breaks } from './breaks.ts';
import { bridgeLength, bridgeWidth } from './bridge-size.ts';
import type { Check, Finding, Found, Remedy, Weight } from './check.ts';
import { classSize, slowObstacle } from './class-size.ts';
import { classTime } from './class-time.ts';
import { crossingEnd } from './crossing-end.ts';
import { entranceClear, startEnd } from './entrance.ts';
import { fanInnerGap } from './fan-inner-gap.ts';
import { forbidden } from './forbidden.ts';
import { gaitShown } from './gait-shown.ts';
import { gapBand } from './gap-band.ts';
import { gateHeight, gateOpening } from './gate-opening.ts';
import { landings } from './landings.ts';
import { lead, leadStated } from './lead.ts';
import { lean } from './lean.ts';
import { level } from './level.ts';
import { isUsuallySilent } from './limits.ts';
import { lineCrosses } from './line-crosses.ts';
import { lineInArena } from './line-in-arena.ts';
import { mandatory } from './mandatory.ts';
import { markerClear } from './marker-clear.ts';
import { obstacleCount } from './obstacle-count.ts';
import { obstacleRoom } from './obstacle-room.ts';
import { obstacleTime } from './obstacle-time.ts';
import { outside } from './outside.ts';
import { overlap } from './overlap.ts';
import { poleCount } from './pole-count.ts';
import { poleLength } from './pole-length.ts';
import { polePrints } from './pole-prints.ts';
import {
  backRaisedHeight,
  jumpHeight,
  raisedJog,
  raisedLope,
  raisedWalkSeveral,
  raisedWalkSingle,
  sidePassHeight,
} from './raised-height.ts';
import { offered } from './remedy.ts';
import { limitsOf } from './rulebooks.ts';
import { serpentineMarkers, serpentineSpacing, serpentineWalk } from './serpentine-spacing.ts';
import { sidePassRoom } from './side-pass-room.ts';
import { skew } from './skew.ts';
import { truck } from './truck.ts';
import { turn } from './turn.ts';
import { unevenGap } from './uneven-gap.ts';
import { waterBoxLength, waterBoxWidth } from './water-box-size.ts';

/** Every check. A new one is one file and one line here. */
export const CHECKS: readonly Check[] = [
  outside,
  startEnd,
  entranceClear,
  overlap,
  breaks,
  lineInArena,
  lineCrosses,
  turn,
  lean,
  lead,
  leadStated,
  gapBand,
  landings,
  polePrints,
  unevenGap,
  skew,
  crossingEnd,
  truck,
  poleLength,
  backClearance,
  backWidth,
  backBarrelWidth,
  backRaisedWidth,
  backRaisedHeight,
  sidePassRoom,
  sidePassHeight,
  serpentineSpacing,
  serpentineWalk,
  serpentineMarkers,
  boxSide,
  squarePole,
  gateOpening,
  gateHeight,
  bridgeWidth,
  bridgeLength,
  waterBoxWidth,
  waterBoxLength,
  raisedWalkSeveral,
  raisedWalkSingle,
  raisedJog,
  raisedLope,
  jumpHeight,
  fanInnerGap,
  markerClear,
  obstacleCount,
  mandatory,
  forbidden,
  level,
  gaitShown,
  alignment,
  poleCount,
  obstacleRoom,
  obstacleTime,
  classTime,
  classSize,
  slowObstacle,
];

const ORDER: Readonly<Record<Weight, number>> = { must: 0, should: 1, note: 2 };

/** What belongs to no leg comes before the first. */
function byWeightThenLeg(a: Found, b: Found): number {
  return ORDER[a.weight] - ORDER[b.weight] || (a.leg ?? -1) - (b.leg ?? -1) || (a.id < b.id ? -1 : 1);
}

type Look = 'usual' | 'closer';

/** What the checks find, fixes untried, the heaviest first and then in the order of the go. */
function worked(survey: Survey, look: Look): readonly Found[] {
  const limits = limitsOf(survey.course);
  const found = new Map<string, Found>();
  for (const check of CHECKS) {
    if (check.closer === true && look === 'usual') continue;
    // An obstacle that is ridden twice has the same fault twice: it is told once.
    for (const each of check.run(survey, limits)) if (!found.has(each.id)) found.set(each.id, each);
  }
  return [...found.values()].sort(byWeightThenLeg);
}

/** Answers about a survey, kept while the survey is. */
function kept<Answer>(work: (survey: Survey, look: Look) => Answer): (survey: Survey, look: Look) => Answer {
  const answers = { usual: new WeakMap<Survey, Answer>(), closer: new WeakMap<Survey, Answer>() };
  return (survey, look) => {
    const known = answers[look].get(survey);
    if (known !== undefined) return known;
    const answer = work(survey, look);
    answers[look].set(survey, answer);
    return answer;
  };
}

const foundOf = kept(worked);

/** The finding: its fixes are tried when somebody first looks at them, for each costs a survey of its own. */
function findingOf(survey: Survey, found: Found, look: Look): Finding {
  const { proposals, ...told } = found;
  const waiver = survey.course.waived?.find(({ finding }) => finding === found.id);
  let tried: readonly Remedy[] | undefined;
  return {
    ...told,
    ...(waiver === undefined ? {} : { waived: waiver.reason }),
    get remedies() {
      tried ??= proposals.length === 0 ? [] : offered(survey, found, (each) => foundOf(each, look));
      return tried;
    },
  };
}

const findings = kept((survey, look) => foundOf(survey, look).map((found) => findingOf(survey, found, look)));

/** What the checks have to say about a survey: musts first, then shoulds and notes, each by leg. Fast enough for a drag. */
export function findingsOf(survey: Survey): readonly Finding[] {
  return findings(survey, 'usual');
}

/** The same with the checks that take a closer look, hoof by hoof: for when nothing is being dragged. */
export function closerFindingsOf(survey: Survey): readonly Finding[] {
  return findings(survey, 'closer');
}

/** The limits that the book in force does not set, with the check that would have asked: "this book does not say". */
export function silent(survey: Survey): readonly { readonly check: Check; readonly limit: string }[] {
  const limits = limitsOf(survey.course);
  return CHECKS.flatMap((check) =>
    check.limits
      .filter((name) => limits[name] === undefined && !isUsuallySilent(name))
      .map((limit) => ({ check, limit })),
  );
}
