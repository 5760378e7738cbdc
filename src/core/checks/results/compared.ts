import type { Course } from '../../course/course.ts';
import { survey } from '../../survey.ts';
import type { Finding, Limit, RuleBook } from '../check.ts';
import { closerFindingsOf } from '../checks.ts';
import { isSameFault } from '../findings/grouped.ts';
import { LIMITS } from '../rulebooks/limits.ts';
import { limitsOf, PRACTICE, rulebookById } from '../rulebooks/rulebooks.ts';

/** One limit in both books; absent: the book does not say. */
export interface LimitDifference {
  readonly name: string;
  readonly title: string;
  readonly a?: Limit;
  readonly b?: Limit;
}

/** A course judged by two books. */
export interface BookComparison {
  readonly a: RuleBook;
  readonly b: RuleBook;
  /** Found under both books, in the words of the first. */
  readonly both: readonly Finding[];
  readonly onlyA: readonly Finding[];
  readonly onlyB: readonly Finding[];
  /** Found by both, but not with the same weight or band. */
  readonly changed: readonly { readonly a: Finding; readonly b: Finding }[];
  /** Limits that the books print differently, or only one of them prints. */
  readonly limits: readonly LimitDifference[];
}

function bookOf(id: string): RuleBook {
  const book = rulebookById(id);
  if (book === undefined) throw new Error(`bookComparison: there is no rule book ${id}`);
  return book;
}

function judgedBy(course: Course, id: string): Course {
  return course.rulebook.id === id ? course : { ...course, rulebook: { ...course.rulebook, id } };
}

/** What the book itself prints: designers' practice lies under every book and makes no difference between two. */
function printedLimit(course: Course, name: string): Limit | undefined {
  const limit = limitsOf(course)[name];
  const isPractice = limit === PRACTICE.limits[name] || limit === PRACTICE.levels?.[course.class.level]?.[name];
  return isPractice ? undefined : limit;
}

function isSame(a: Limit | undefined, b: Limit | undefined): boolean {
  return a?.least === b?.least && a?.most === b?.most && a?.unit === b?.unit && a?.multiples === b?.multiples;
}

function limitDifferences(one: Course, other: Course): readonly LimitDifference[] {
  return Object.entries(LIMITS).flatMap(([name, { title }]) => {
    const a = printedLimit(one, name);
    const b = printedLimit(other, name);
    if (isSame(a, b)) return [];
    return [{ name, title, ...(a === undefined ? {} : { a }), ...(b === undefined ? {} : { b }) }];
  });
}

function isAlike(a: Finding, b: Finding): boolean {
  return a.weight === b.weight && a.allowed?.least === b.allowed?.least && a.allowed?.most === b.allowed?.most;
}

/** The same course under two rule books; house rules stay in force under both. Throws where there is no such book. */
export function bookComparison(course: Course, idA: string, idB: string): BookComparison {
  const [a, b] = [bookOf(idA), bookOf(idB)];
  const [one, other] = [judgedBy(course, idA), judgedBy(course, idB)];
  const ofA = closerFindingsOf(survey(one));
  const ofB = closerFindingsOf(survey(other));
  const pairs = ofA.flatMap((finding) => {
    const twin = ofB.find((each) => isSameFault(each, finding));
    return twin === undefined ? [] : [{ a: finding, b: twin }];
  });
  const shared = new Set(pairs.flatMap((pair) => [pair.a, pair.b]));
  return {
    a,
    b,
    both: pairs.filter((pair) => isAlike(pair.a, pair.b)).map((pair) => pair.a),
    changed: pairs.filter((pair) => !isAlike(pair.a, pair.b)),
    onlyA: ofA.filter((finding) => !shared.has(finding)),
    onlyB: ofB.filter((finding) => !shared.has(finding)),
    limits: limitDifferences(one, other),
  };
}
