import type { Finding } from '../../core/checks/check.ts';
import { CHECKS } from '../../core/checks/checks.ts';
import type { Survey } from '../../core/survey.ts';
import { checkWords } from '../../words/check.ts';
import { obstacleTitle } from '../app-words.ts';
import { subjectOf } from './finding-subject.ts';

/** How the findings are put together. */
export type Grouping = 'obstacle' | 'check';

/** Findings under one heading: the open ones first, each as heavy as the checks order them. */
export interface FindingGroup {
  readonly id: string;
  readonly title: string;
  /** `3`, `2 and 5`: where the obstacle is ridden in the go. */
  readonly number?: string;
  readonly findings: readonly Finding[];
  /** The same findings, those that are alike on one card. */
  readonly cards: readonly FindingBundle[];
}

/** Findings of one check that differ only in their place: they share a card. */
export type FindingBundle = readonly [Finding, ...Finding[]];

const COURSE = 'course';

/** The obstacle of the layout that a finding is about; what is about more of them is about the whole course. */
function obstacleAbout(finding: Finding, survey: Survey): string {
  const subject = subjectOf(finding);
  const { obstacles, ride } = survey.layout;
  if (subject !== undefined && obstacles.some(({ id }) => id === subject)) return subject;
  return (finding.leg === undefined ? undefined : ride.legs[finding.leg]?.obstacle) ?? COURSE;
}

function openFirst(findings: readonly Finding[]): readonly Finding[] {
  return [
    ...findings.filter(({ waived }) => waived === undefined),
    ...findings.filter(({ waived }) => waived !== undefined),
  ];
}

/** A thousandth of a metre, or of a count: what is printed alike is alike. */
const SHARP = 1000;

/** What two findings of one check share when they are alike; by check they must be measured alike as well. */
function likeness({ check, weight, waived, measured, allowed, id }: Finding, grouping: Grouping): string {
  const where = grouping === 'obstacle' ? '' : measured === undefined ? id : Math.round(measured * SHARP);
  return JSON.stringify([check, weight, waived ?? null, allowed ?? null, where]);
}

/** The findings of a group with those that are alike put on one card, at the place of the first. */
function bundlesOf(findings: readonly Finding[], grouping: Grouping): readonly FindingBundle[] {
  const bundles = new Map<string, [Finding, ...Finding[]]>();
  for (const finding of findings) {
    const key = likeness(finding, grouping);
    const known = bundles.get(key);
    if (known === undefined) bundles.set(key, [finding]);
    else known.push(finding);
  }
  return [...bundles.values()];
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
function byObstacle(findings: readonly Finding[], survey: Survey): readonly BareGroup[] {
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
        title: obstacle === undefined ? checkWords.theWholeCourse : obstacleTitle(obstacle, survey.layout),
        ...(numbers === undefined ? {} : { number: numbers.join(' and ') }),
        findings: openFirst(own),
      };
    });
}

/** Check by check, the heaviest finding first; the heading says what is asked. */
function byCheck(findings: readonly Finding[]): readonly BareGroup[] {
  const found = findingsByKey(openFirst(findings), ({ check }) => check);
  return [...found].map(([id, own]) => ({
    id,
    title: CHECKS.find((check) => check.id === id)?.says.replace(/\.$/, '') ?? id,
    findings: own,
  }));
}

type BareGroup = Omit<FindingGroup, 'cards'>;

export function groupsOf(findings: readonly Finding[], survey: Survey, grouping: Grouping): readonly FindingGroup[] {
  const groups = grouping === 'obstacle' ? byObstacle(findings, survey) : byCheck(findings);
  return groups.map((group) => ({ ...group, cards: bundlesOf(group.findings, grouping) }));
}

/** The ids of the findings in the order in which the list shows them. */
export function listedIds(groups: readonly FindingGroup[]): readonly string[] {
  return groups.flatMap(({ cards }) => cards.flatMap((bundle) => bundle.map(({ id }) => id)));
}
