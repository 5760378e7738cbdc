import { INCH } from '../../measure/quantity.ts';
import { obstacleKind } from '../../obstacles/obstacles.ts';
import { lerp } from '../../plane/point.ts';
import type { Gap } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Limit, Limits, Proposal, RawFinding, Weight } from '../check.ts';
import { resizeGap } from '../findings/constrained-edits.ts';
import { bandWords, measuredWords, valueWords } from '../findings/finding-words.ts';
import { gapWords, obstacleWords, pieceWords } from '../findings/thing-words.ts';
import { rebuildNear } from '../findings/verified-fixes.ts';
import { type Aim, aimsOf } from '../rulebooks/aims.ts';
import { BAND_TOLERANCE, isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

/** Tape and line are reported separately when they differ by more than a crew would notice, metres. */
const TAPE_DIFFERENCE = INCH;

/** What is measured of a gap, and where. */
export function gapPlace({ ends, leg, obstacle, keys, ridden }: Gap) {
  return { at: lerp(ends[0], ends[1], 0.5), leg, keys: [obstacle, ...keys], measured: ridden };
}

/** The sentence for several gaps of which the same is `measured`; their findings are found by id. */
export function gapsSaid(survey: Survey, gapById: ReadonlyMap<string, Gap>, measured: string) {
  return (members: readonly RawFinding[]): string => {
    const gaps = members.flatMap(({ id }) => gapById.get(id) ?? []);
    return `${gapWords(survey, gaps)} are ${measured}`;
  };
}

/** Whether tape and line differ by more than a crew would notice. */
function hasTapeDifference(gap: Gap): boolean {
  return Math.abs(gap.ridden - gap.taped) > TAPE_DIFFERENCE;
}

/** The wanted gap as it is taped, in words. */
function wantedWords(survey: Survey, gap: Gap, wanted: number): string {
  return `${valueWords('length', wanted, survey.course.unit)}${hasTapeDifference(gap) ? ' by the tape' : ''}`;
}

/** On a curve the tape follows the line only nearly: a fix aims this much past the edge of the band, metres. */
const PAST = INCH / 4;

/** What has to be taped so that the gap is so long along the line. */
function tapedLength({ taped, ridden }: Gap, wanted: number): number {
  if (Math.abs(ridden - taped) <= BAND_TOLERANCE) return wanted;
  return taped + ((wanted + Math.sign(wanted - ridden) * PAST - ridden) * taped) / ridden;
}

/** The pole at the far end of the gap, moved along the tape until the gap is `wanted`. */
function poleMoveProposals(survey: Survey, gap: Gap, key: string, wanted: number): Proposal[] {
  const piece = survey.pieces.find((each) => each.key === key);
  if (piece === undefined || piece.piece.fixed || gap.taped === 0) return [];
  const [near, far] = key === gap.keys[1] ? gap.ends : [gap.ends[1], gap.ends[0]];
  const by = (wanted - gap.taped) / gap.taped;
  const pose = { ...piece.pose, x: piece.pose.x + (far.x - near.x) * by, y: piece.pose.y + (far.y - near.y) * by };
  return [
    {
      idea: 'move a pole',
      says: `Move ${pieceWords(survey, key)} so that the gap is ${wantedWords(survey, gap, wanted)}`,
      edit: (course) => resizeGap(course, { keys: gap.keys, far: key, taped: wanted, pose }),
    },
  ];
}

/**
 * Ways to bring a gap to one of the wanted lengths along the line, the nearest first: build the obstacle again, else
 * move one pole.
 */
export function gapProposals(survey: Survey, gap: Gap, ridden: readonly Aim[]): readonly Proposal[] {
  const wanted = ridden.map(({ value, idea }) => ({ value: tapedLength(gap, value), idea }));
  const obstacle = survey.layout.obstacles.find((each) => each.id === gap.obstacle);
  if (obstacle === undefined) return [];
  const gapParam = obstacleKind(obstacle.kind)?.gapParam;
  const buildProposals = wanted.flatMap(({ value, idea }): Proposal[] => {
    if (gapParam === undefined) return [];
    const next = gapParam.value(obstacle.values, gap.taped, value);
    return [
      {
        idea: `build ${idea}`,
        says: `Set the gaps of ${obstacleWords(survey, gap.obstacle)} to ${wantedWords(survey, gap, value)}`,
        edit: (course) => rebuildNear(course, gap.obstacle, { [gapParam.param]: next }),
      },
    ];
  });
  const moveProposals = wanted.flatMap(({ value }) => [
    ...poleMoveProposals(survey, gap, gap.keys[1], value),
    ...poleMoveProposals(survey, gap, gap.keys[0], value),
  ]);
  return [...buildProposals, ...moveProposals];
}

/**
 * How much one horse's strides differ by themselves, as a share (Drevemo et al., Equine Vet J 12, 1980: about 2 %, at the
 * racing trot). No book writes multiples out, so a multiple that is missed by less is only noted.
 */
const OWN_SPREAD = 0.02;

/** Whether the gap is within a horse's own spread of two or more bands laid end to end. */
function isNearlyMultiple(limit: Limit, gap: Gap): boolean {
  const { least, most, multiples } = bandOf(limit);
  if (!multiples || least === undefined || most === undefined) return false;
  if (gap.ridden <= most * (1 + OWN_SPREAD)) return false;
  return isInBand({ least: least * (1 - OWN_SPREAD), most: most * (1 + OWN_SPREAD), multiples }, gap.ridden);
}

/** The band that the gap misses, and how strictly; absent: it misses none. */
function missedLimit(gap: Gap, limits: Limits): { readonly limit: Limit; readonly weight: Weight } | undefined {
  const allowed = limits[`gap.${gap.gait}`];
  const better = limits[`gap.${gap.gait}.recommended`];
  if (allowed !== undefined && !isInBand(bandOf(allowed), gap.ridden)) {
    return { limit: allowed, weight: isNearlyMultiple(allowed, gap) ? 'note' : 'must' };
  }
  if (better !== undefined && !isInBand(bandOf(better), gap.ridden)) return { limit: better, weight: 'should' };
  return undefined;
}

/** Who says that the path is what is measured. */
const ALONG_THE_PATH = "a state university extension's article, Setting a trail course for success";

const idOf = ({ keys, gait }: Gap): string => `gap-band:${keys.join('+')}:${gait}`;

function gapBandFindings(
  survey: Survey,
  limits: Limits,
  gap: Gap,
  gapById: ReadonlyMap<string, Gap>,
): readonly RawFinding[] {
  const miss = missedLimit(gap, limits);
  if (miss === undefined) return [];
  const { unit, rulebook } = survey.course;
  const { limit } = miss;
  const band = bandOf(limit);
  const byTape = hasTapeDifference(gap)
    ? ` along the line (${valueWords('length', gap.taped, unit)} by a straight tape)`
    : '';
  const asks = miss.weight === 'should' ? 'is better with' : 'asks for';
  const measured = `${measuredWords(limit, gap.ridden, unit)}${byTape}; a ${gap.gait} ${asks} ${bandWords(limit, unit)}.`;
  // What the book recommends lies inside what it allows: a fix aims there.
  const aim = limits[`gap.${gap.gait}.recommended`] ?? limit;
  const side = gap.ridden < (band.least ?? 0) ? 'short' : 'long';
  return [
    {
      id: idOf(gap),
      check: 'gap-band',
      weight: limit.weight ?? miss.weight,
      says: `${gapWords(survey, [gap])} is ${measured}`,
      because: gapBand.because,
      ...gapPlace(gap),
      allowed: band,
      source: hasTapeDifference(gap) ? `${limit.source}; along the path: ${ALONG_THE_PATH}` : limit.source,
      group: {
        id: `gap-band:${gap.obstacle}:${gap.gait}:${side}`,
        // One setting gives gaps of one length; gaps of another length are another mistake.
        value: gap.ridden,
        says: gapsSaid(survey, gapById, measured),
      },
      proposals: gapProposals(survey, gap, aimsOf(`gap.${gap.gait}`, aim, gap.ridden, rulebook)),
    },
  ];
}

/**
 * Judged along the path the horse takes, inside to inside, as published rules measure (EWU Regelbuch § 7404.2; a state
 * university extension's article, Setting a trail course for success). On a straight the tape says the same.
 */
export const gapBand: Check = {
  id: 'gap-band',
  says: 'Every gap between poles suits the gait it is ridden in.',
  because: 'A gap between two strides makes the horse reach, chip in or hit the pole.',
  weight: 'must',
  limits: ['gap.walk', 'gap.walk.recommended', 'gap.jog', 'gap.lope'],
  findings: (survey, limits) => {
    const gapById = new Map(survey.line.gaps.map((gap) => [idOf(gap), gap]));
    return survey.line.gaps.flatMap((gap) => gapBandFindings(survey, limits, gap, gapById));
  },
};
