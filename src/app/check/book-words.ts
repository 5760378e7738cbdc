import type { Limit } from '../../core/checks/check.ts';
import { silentLimits } from '../../core/checks/checks.ts';
import { bandWords } from '../../core/checks/findings/finding-words.ts';
import { LIMITS } from '../../core/checks/rulebooks/limits.ts';
import { limitsOf, PRACTICE } from '../../core/checks/rulebooks/rulebooks.ts';
import type { Course } from '../../core/course/course.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import type { Survey } from '../../core/survey.ts';
import { uncapitalized } from '../../core/text/sentence.ts';
import { checkWords } from '../../words/check.ts';

/** What a limit bounds, to stand inside a sentence: `the gap between poles at the jog`. */
function inSentence(name: string): string {
  const title = LIMITS[name]?.title ?? name;
  const small = uncapitalized(title);
  return /^(from|how|a|each) /.test(small) ? small : checkWords.withThe(small);
}

function sayNothing(name: string): string {
  const title = LIMITS[name]?.title ?? name;
  if (/^(From|How|A) /.test(title)) return checkWords.silentOn(inSentence(name));
  // What is many takes no article: markers, poles, leads.
  const many = /^(Poles|Markers|Leads|Obstacles|Entries|Bends|Parts|Raised) /.test(title);
  return checkWords.silentAbout(many ? inSentence(name).replace(/^the /, '') : inSentence(name));
}

/** What nobody says, neither the book nor designers' practice: those checks stay silent. */
export function silences(survey: Survey): readonly string[] {
  return [...new Set(silentLimits(survey).map(({ limit }) => limit))].map(sayNothing);
}

/** What the book leaves open and designers' practice is asked about instead. */
export function practiceSentences(course: Course): readonly string[] {
  const limits = limitsOf(course);
  return Object.keys(LIMITS).flatMap((name) => {
    const limit = limits[name];
    const isPractice = limit !== undefined && limit === PRACTICE.limits[name];
    if (!isPractice || LIMITS[name]?.optional === true) return [];
    return [`${LIMITS[name]?.title ?? name}: ${limitWords(limit, course.unit)}`];
  });
}

/** A band in words; a count of nothing is `none`. */
export function limitWords(limit: Limit | undefined, unit: LengthUnit): string {
  if (limit === undefined) return checkWords.doesNotSay;
  if (limit.unit === 'count' && limit.most === 0) return 'none';
  return bandWords(limit, unit);
}

/** One limit that is another one for this level than for an open class. */
export interface LevelChange {
  readonly title: string;
  readonly here: string;
  readonly open: string;
  readonly source: string;
}

/** What the level of the class changes under the book in force. */
export function levelChanges(course: Course): readonly LevelChange[] {
  const here = limitsOf(course);
  const open = limitsOf({ ...course, class: { ...course.class, level: 'open' } });
  return Object.entries(LIMITS).flatMap(([name, { title }]) => {
    const [now, usual] = [here[name], open[name]];
    if (now === usual) return [];
    return [
      {
        title,
        here: limitWords(now, course.unit),
        open: usual === undefined ? checkWords.noLimit : limitWords(usual, course.unit),
        source: now?.source ?? '',
      },
    ];
  });
}
