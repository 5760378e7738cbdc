import type { Course, Waiver } from '../course/course.ts';
import type { Survey } from '../survey.ts';
import type { Band, Check, Finding, RawFinding, Remedy, Weight } from './check.ts';
import { classSize } from './class/class-size.ts';
import { classTime } from './class/class-time.ts';
import { cramped } from './class/cramped.ts';
import { forbidden } from './class/forbidden.ts';
import { gaitShown } from './class/gait-shown.ts';
import { level } from './class/level.ts';
import { mandatory } from './class/mandatory.ts';
import { obstacleCount } from './class/obstacle-count.ts';
import { obstacleTime } from './class/obstacle-time.ts';
import { poleCount } from './class/pole-count.ts';
import { slowObstacle } from './class/slow-obstacle.ts';
import { groupedFindings } from './findings/grouped.ts';
import { verifiedRemedies } from './findings/verified-fixes.ts';
import { betterWay } from './line/better-way.ts';
import { breaks } from './line/breaks.ts';
import { crossingEnd } from './line/crossing-end.ts';
import { lead, leadStated } from './line/lead.ts';
import { lean } from './line/lean.ts';
import { lineCrosses } from './line/line-crosses.ts';
import { lineInArena } from './line/line-in-arena.ts';
import { oneLead } from './line/one-lead.ts';
import { polePrints } from './line/pole-prints.ts';
import { roomBeyond } from './line/room-beyond.ts';
import { skew } from './line/skew.ts';
import { transitionRoom } from './line/transition-room.ts';
import { turn } from './line/turn.ts';
import { alignment } from './placing/alignment.ts';
import { entranceClear, startEnd } from './placing/entrance.ts';
import { obstacleRoom } from './placing/obstacle-room.ts';
import { outside } from './placing/outside.ts';
import { overlap } from './placing/overlap.ts';
import { truck } from './placing/truck.ts';
import { LIMITS } from './rulebooks/limits.ts';
import { bandOf, limitsOf } from './rulebooks/rulebooks.ts';
import { backClearance } from './sizes/back-clearance.ts';
import { backBarrelWidth, backRaisedWidth, backWidth } from './sizes/back-width.ts';
import { boxSide, squarePole } from './sizes/box-side.ts';
import { bridgeLength, bridgeWidth } from './sizes/bridge-size.ts';
import { gateHeight, gateOpening } from './sizes/gate-opening.ts';
import { markerClearance } from './sizes/marker-clear.ts';
import { poleLength } from './sizes/pole-length.ts';
import {
  backRaisedHeight,
  jumpHeight,
  raisedJog,
  raisedLope,
  raisedWalkSeveral,
  raisedWalkSingle,
  sidePassHeight,
} from './sizes/raised-height.ts';
import { sidePassRoom } from './sizes/side-pass-room.ts';
import { waterBoxLength, waterBoxWidth } from './sizes/water-box-size.ts';
import { fanInnerGap } from './spacing/fan-inner-gap.ts';
import { gapBand } from './spacing/gap-band.ts';
import { landings } from './spacing/landings.ts';
import { rhythm } from './spacing/rhythm.ts';
import { serpentineMarkers, serpentineSpacing, serpentineWalk } from './spacing/serpentine-spacing.ts';
import { unevenGap } from './spacing/uneven-gap.ts';

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
  oneLead,
  transitionRoom,
  roomBeyond,
  gapBand,
  rhythm,
  landings,
  polePrints,
  unevenGap,
  skew,
  crossingEnd,
  betterWay,
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
  markerClearance,
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
  cramped,
];

const ORDER: Readonly<Record<Weight, number>> = { must: 0, should: 1, note: 2 };

/** What belongs to no leg comes before the first. */
function byWeightThenLeg(a: RawFinding, b: RawFinding): number {
  return ORDER[a.weight] - ORDER[b.weight] || (a.leg ?? -1) - (b.leg ?? -1) || (a.id < b.id ? -1 : 1);
}

/** Which checks are run: those that a drag has time for, all but the closest, or all. */
const DEPTHS = ['drag', 'rest', 'closer'] as const;
type CheckDepth = (typeof DEPTHS)[number];

/** The findings with their fixes untried: by weight, the most severe first, then by leg. */
function rawFindings(survey: Survey, depth: CheckDepth): readonly RawFinding[] {
  const limits = limitsOf(survey.course);
  const found = new Map<string, RawFinding>();
  for (const check of CHECKS) {
    if (DEPTHS.indexOf(check.runs ?? 'drag') > DEPTHS.indexOf(depth)) continue;
    // An obstacle that is ridden twice would have the same finding twice; one is enough.
    for (const each of check.findings(survey, limits)) if (!found.has(each.id)) found.set(each.id, each);
  }
  const waived = new Set(survey.course.waived?.map(({ finding }) => finding));
  return groupedFindings([...found.values()], (id) => waived.has(id)).toSorted(byWeightThenLeg);
}

/** Caches an answer for as long as its survey exists. */
function cachedBySurvey<Answer>(
  work: (survey: Survey, depth: CheckDepth) => Answer,
): (survey: Survey, depth: CheckDepth) => Answer {
  const answers = {
    drag: new WeakMap<Survey, Answer>(),
    rest: new WeakMap<Survey, Answer>(),
    closer: new WeakMap<Survey, Answer>(),
  };
  return (survey, depth) => {
    const known = answers[depth].get(survey);
    if (known !== undefined) return known;
    const answer = work(survey, depth);
    answers[depth].set(survey, answer);
    return answer;
  };
}

const cachedRawFindings = cachedBySurvey(rawFindings);

/**
 * The findings of a copy on which a fix is tried, by what the fix is for. What takes a closer look is only a note, and a
 * note never speaks against a fix: it is run only where the fix is for such a finding.
 */
const foundOnCopy: Readonly<Record<CheckDepth, (copy: Survey) => readonly RawFinding[]>> = {
  drag: (copy) => cachedRawFindings(copy, 'drag'),
  rest: (copy) => cachedRawFindings(copy, 'rest'),
  closer: (copy) => cachedRawFindings(copy, 'closer'),
};

function fixDepth({ check }: RawFinding, depth: CheckDepth): CheckDepth {
  const isCloser = CHECKS.some(({ id, runs }) => id === check && runs === 'closer');
  return depth === 'closer' && !isCloser ? 'rest' : depth;
}

/** The waivers for a finding: for its own id, for that of its group, or one for each of all that it stands for. */
function waiversOf(found: RawFinding, waivers: readonly Waiver[]): readonly Waiver[] {
  const waiverFor = (id: string) => waivers.find(({ finding }) => finding === id);
  const own = waiverFor(found.id) ?? (found.group === undefined ? undefined : waiverFor(found.group.id));
  if (own !== undefined) return [own];
  const each = (found.members ?? []).map(waiverFor);
  return each.every((waiver) => waiver !== undefined) ? each : [];
}

/** What a finding has while waivers hold. */
function waivedWords(waivers: readonly Waiver[]): Pick<Finding, 'waived' | 'waivedBy'> {
  if (waivers.length === 0) return {};
  const reasons = new Set(waivers.map(({ reason }) => reason));
  return { waived: [...reasons].join('; '), waivedBy: waivers.map(({ finding }) => finding) };
}

/** The finding with its fixes: they are tried on first access, because each costs a survey of its own. */
function findingOf(survey: Survey, found: RawFinding, depth: CheckDepth): Finding {
  const { proposals, group, ...rest } = found;
  let tried: readonly Remedy[] | undefined;
  return {
    ...rest,
    ...waivedWords(waiversOf(found, survey.course.waived ?? [])),
    get remedies() {
      tried ??= proposals.length === 0 ? [] : verifiedRemedies(survey, found, foundOnCopy[fixDepth(found, depth)]);
      return tried;
    },
  };
}

const findings = cachedBySurvey((survey, depth) =>
  cachedRawFindings(survey, depth).map((found) => findingOf(survey, found, depth)),
);

/** The findings about a survey: musts first, then shoulds and notes, each by leg. */
export function findingsOf(survey: Survey): readonly Finding[] {
  return findings(survey, 'rest');
}

/** The same without the checks that a pointer move has no time for. */
export function dragFindingsOf(survey: Survey): readonly Finding[] {
  return findings(survey, 'drag');
}

/** The same, with the checks that look hoof by hoof: for when nothing is being dragged. */
export function closerFindingsOf(survey: Survey): readonly Finding[] {
  return findings(survey, 'closer');
}

/** What is asked for under the name of a limit, SI; undefined where nobody asks. */
export function bandAsked(course: Course, name: string): Band | undefined {
  const limit = limitsOf(course)[name];
  return limit === undefined ? undefined : bandOf(limit);
}

/** The limits that no book in force sets, each with the check that wanted it. */
export function silentLimits(survey: Survey): readonly { readonly check: Check; readonly limit: string }[] {
  const limits = limitsOf(survey.course);
  return CHECKS.flatMap((check) =>
    check.limits
      .filter((name) => limits[name] === undefined && LIMITS[name]?.optional !== true)
      .map((limit) => ({ check, limit })),
  );
}
