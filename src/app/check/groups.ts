import type { Finding } from '../../core/checks/check.ts';
import { CHECKS } from '../../core/checks/checks.ts';
import type { Survey } from '../../core/survey.ts';
import { obstacleTitle } from '../app-words.ts';

/** How the findings are put together. */
export type Grouping = 'obstacle' | 'check';

/** Findings under one heading: the open ones first, each as heavy as the checks order them. */
export interface FindingGroup {
  readonly id: string;
  readonly title: string;
  /** `3`, `2 and 5`: where the obstacle is ridden in the go. */
  readonly number?: string;
  readonly findings: readonly Finding[];
}

const COURSE = 'course';

/** The one obstacle that a finding is about, or the first of two; what is about more is about the whole course. */
function obstacleAbout({ keys, leg }: Finding, survey: Survey): string {
  const ids = new Set(keys.map((key) => key.split('/')[0] ?? key));
  const known = survey.layout.obstacles.filter(({ id }) => ids.has(id));
  if (known.length > 2) return COURSE;
  const first = keys.map((key) => key.split('/')[0]).find((id) => known.some((each) => each.id === id));
  return first ?? (leg === undefined ? undefined : survey.layout.ride.legs[leg]?.obstacle) ?? COURSE;
}

function openFirst(findings: readonly Finding[]): readonly Finding[] {
  return [
    ...findings.filter(({ waived }) => waived === undefined),
    ...findings.filter(({ waived }) => waived !== undefined),
  ];
}

function findingsByKey(
  findings: readonly Finding[],
  keyOf: (finding: Finding) => string,
): ReadonlyMap<string, Finding[]> {
  const found = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = keyOf(finding);
    found.set(key, [...(found.get(key) ?? []), finding]);
  }
  return found;
}

/** Obstacle by obstacle in the order of the go, then what is not ridden, then what concerns the whole course. */
function byObstacle(findings: readonly Finding[], survey: Survey): readonly FindingGroup[] {
  const found = findingsByKey(findings, (finding) => obstacleAbout(finding, survey));
  const first = (id: string) =>
    survey.numbers.get(id)?.[0] ?? (id === COURSE ? Number.POSITIVE_INFINITY : Number.MAX_VALUE);
  return [...found]
    .sort(([a], [b]) => Math.sign(first(a) - first(b)) || 0)
    .map(([id, own]) => {
      const obstacle = survey.layout.obstacles.find((each) => each.id === id);
      const numbers = survey.numbers.get(id);
      return {
        id,
        title: obstacle === undefined ? 'The whole course' : obstacleTitle(obstacle, survey.layout),
        ...(numbers === undefined ? {} : { number: numbers.join(' and ') }),
        findings: openFirst(own),
      };
    });
}

/** Check by check, the heaviest finding first; the heading says what is asked. */
function byCheck(findings: readonly Finding[]): readonly FindingGroup[] {
  const found = findingsByKey(openFirst(findings), ({ check }) => check);
  return [...found].map(([id, own]) => ({
    id,
    title: CHECKS.find((check) => check.id === id)?.says.replace(/\.$/, '') ?? id,
    findings: own,
  }));
}

export function groupsOf(findings: readonly Finding[], survey: Survey, grouping: Grouping): readonly FindingGroup[] {
  return grouping === 'obstacle' ? byObstacle(findings, survey) : byCheck(findings);
}
