import type { Course, Leg, Level } from '../../course/course.ts';
import { changeLeg } from '../../course/edit-ride.ts';
import type { Point } from '../../plane/point.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Limit, Proposal, RawFinding } from '../check.ts';
import { obstacleWords } from '../findings/thing-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf, PRACTICE, rulebookById } from '../rulebooks/rulebooks.ts';

const LEVELS: Readonly<Record<Level, string>> = {
  open: 'An open class',
  amateur: 'An amateur class',
  youth: 'A youth class',
  novice: 'A novice class',
  'walk-jog': 'A walk-jog class',
  led: 'A led class',
};

/** One place where the course asks for something. */
interface Occurrence {
  readonly at: Point;
  readonly leg: number;
  readonly keys: readonly string[];
}

interface Demand {
  readonly limit: string;
  readonly what: readonly [one: string, many: string];
  occurrences(survey: Survey): readonly Occurrence[];
  /** What cures all places at once. */
  proposals?(survey: Survey): readonly Proposal[];
}

const isLoped = ({ gait, approach }: Leg): boolean => gait === 'lope' || approach === 'lope';

/** The leg at the calmer gait wherever it lopes. */
function calmed(course: Course, { id, gait, approach }: Leg, calmer: 'jog' | 'walk'): Course {
  return changeLeg(course, id, {
    ...(gait === 'lope' ? { gait: calmer } : {}),
    ...(approach === 'lope' ? { approach: calmer } : {}),
  });
}

/** All that is loped at one calmer gait: a part of it would leave the class above its level. */
function calmerProposals(survey: Survey): readonly Proposal[] {
  const loped = survey.layout.ride.legs.filter(isLoped);
  const [only] = loped;
  const what =
    loped.length === 1 && only !== undefined
      ? `${obstacleWords(survey, only.obstacle)}, and the way to it,`
      : 'everything that is loped';
  return (['jog', 'walk'] as const).map((gait) => ({
    idea: 'calmer',
    meant: true as const,
    says: `Ride ${what} at a ${gait}`,
    edit: (course: Course) => loped.reduce((changed, leg) => calmed(changed, leg, gait), course),
  }));
}

function lopes(survey: Survey): readonly Occurrence[] {
  return survey.layout.ride.legs.flatMap((leg, index) => {
    if (!isLoped(leg)) return [];
    const at =
      survey.line.elements.find((element) => element.leg === index)?.path[0]?.start ?? survey.layout.ride.start;
    return [{ at: { x: at.x, y: at.y }, leg: index, keys: [leg.obstacle] }];
  });
}

function raisedPoles(survey: Survey): readonly Occurrence[] {
  const byKey = new Map(survey.pieces.map((piece) => [piece.key, piece]));
  return survey.line.crossings.flatMap(({ key, leg, obstacle, pose }) => {
    const values = byKey.get(key)?.piece.values ?? {};
    const raised = Number(values.raisedStart ?? 0) + Number(values.raisedEnd ?? 0);
    return raised > 0 ? [{ at: { x: pose.x, y: pose.y }, leg, keys: [obstacle, key] }] : [];
  });
}

/** A bend while backing: an arc backwards, or a turn between two stretches backwards. */
function backBends(survey: Survey): readonly Occurrence[] {
  const { elements } = survey.line;
  const { legs } = survey.layout.ride;
  return elements.flatMap((element, i) => {
    const before = elements[i - 1];
    const after = elements[i + 1];
    const between = element.turn !== 0 && before?.move === 'back' && after?.move === 'back' && before.leg === after.leg;
    const bends =
      element.move === 'back' && element.path.some(({ curvature, length }) => Math.abs(curvature * length) > 0.3);
    const at = element.path[0]?.start;
    if (at === undefined || !(between || bends)) return [];
    return [{ at: { x: at.x, y: at.y }, leg: element.leg, keys: [legs[element.leg]?.obstacle ?? ''] }];
  });
}

const DEMANDS: readonly Demand[] = [
  {
    limit: 'level.lope',
    what: ['obstacle at the lope', 'obstacles at the lope'],
    occurrences: lopes,
    proposals: calmerProposals,
  },
  { limit: 'level.raised', what: ['raised pole', 'raised poles'], occurrences: raisedPoles },
  { limit: 'level.back-bends', what: ['bend while backing', 'bends while backing'], occurrences: backBends },
];

/** Where the limit comes from: the level of the class, or a book that sets it for all levels. */
function subject({ course }: Survey, limit: string): string {
  const { level: own } = course.class;
  const byLevel = [rulebookById(course.rulebook.id), PRACTICE].some(
    (book) => book?.levels?.[own]?.[limit] !== undefined,
  );
  return byLevel ? LEVELS[own] : 'The book';
}

function levelFindings(survey: Survey, demand: Demand, limit: Limit): RawFinding[] {
  const occurrences = demand.occurrences(survey);
  const [first] = occurrences;
  if (first === undefined || isInBand(bandOf(limit), occurrences.length)) return [];
  const most = limit.most ?? 0;
  const count = `${occurrences.length} ${demand.what[occurrences.length === 1 ? 0 : 1]}`;
  const says = `${subject(survey, demand.limit)} has ${most === 0 ? 'no' : `at most ${most}`} ${demand.what[1]}; this course has ${count}.`;
  return occurrences.slice(most).map((place, i) => ({
    id: `${demand.limit.replace('.', ':')}:${survey.layout.ride.legs[place.leg]?.id ?? place.leg}:${i + most + 1}`,
    check: 'level',
    weight: limit.weight ?? level.weight,
    says,
    because: level.because,
    at: place.at,
    leg: place.leg,
    keys: place.keys,
    measured: occurrences.length,
    allowed: bandOf(limit),
    source: limit.source,
    group: { id: demand.limit.replace('.', ':'), says: () => says },
    proposals: demand.proposals?.(survey) ?? [],
  }));
}

/** What a level may be asked is data: `levels` of a book, or of designers' practice. */
export const level: Check = {
  id: 'level',
  about: 'course',
  says: 'The course asks no more than its level can do.',
  because: 'A course above its level turns a class into a row of refusals, and frightens those who came to learn.',
  weight: 'note',
  limits: DEMANDS.map(({ limit }) => limit),
  findings: (survey, limits) =>
    DEMANDS.flatMap((demand) => {
      const limit = limits[demand.limit];
      return limit === undefined ? [] : levelFindings(survey, demand, limit);
    }),
};
