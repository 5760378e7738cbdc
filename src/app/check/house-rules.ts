import type { Quantity } from '../../core/checks/check.ts';
import { CHECKS } from '../../core/checks/checks.ts';
import { bandWords, valueWords } from '../../core/checks/findings/finding-words.ts';
import { LIMITS } from '../../core/checks/rulebooks/limits.ts';
import { limitsOf } from '../../core/checks/rulebooks/rulebooks.ts';
import type { Course, HouseLimit } from '../../core/course/course.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { readTyped } from '../../core/measure/typed.ts';
import type { Refusal } from '../../desk/input.ts';
import { checkWords } from '../../words/check.ts';

/** The limits that some check asks for, by name, in the order of the list of limits. */
export const ASKED: readonly string[] = askedLimits();

function askedLimits(): readonly string[] {
  const asked = new Set(CHECKS.flatMap((check) => check.limits));
  return Object.keys(LIMITS).filter((name) => asked.has(name));
}

export function limitTitle(name: string): string {
  return LIMITS[name]?.title ?? name;
}

function quantityOf(name: string): Quantity {
  return LIMITS[name]?.quantity ?? 'length';
}

export interface TypedHouseRule {
  readonly name: string;
  readonly least: string;
  readonly most: string;
  readonly reason: string;
}
export type HouseRuleErrors = { readonly [Field in 'least' | 'most' | 'reason']?: Refusal };

/** The rule that was typed, SI; or what is wrong with it, by field. */
export function readHouseRule(
  { name, least, most, reason }: TypedHouseRule,
  unit: LengthUnit,
): { readonly rule: HouseLimit } | { readonly refusals: HouseRuleErrors } {
  const ends: { least?: number; most?: number } = {};
  const refusals: { -readonly [Field in keyof HouseRuleErrors]: HouseRuleErrors[Field] } = {};
  for (const [end, text] of [['least', least] as const, ['most', most] as const]) {
    if (text.trim() === '') continue;
    const read = readTyped(quantityOf(name), text, unit);
    if (read.kind === 'refused') refusals[end] = read.why;
    else ends[end] = read.value;
  }
  if (least.trim() === '' && most.trim() === '') refusals.least = checkWords.sayLeastMostOr;
  if (ends.least !== undefined && ends.most !== undefined && ends.least > ends.most) {
    const [low, high] = [ends.least, ends.most].map((end) => valueWords(quantityOf(name), end, unit));
    refusals.most = checkWords.mostLessThanLeast(high ?? '', low ?? '');
  }
  if (reason.trim() === '') refusals.reason = checkWords.sayWhyToldWith;
  return Object.keys(refusals).length > 0 ? { refusals } : { rule: { ...ends, reason: reason.trim() } };
}

/** `3' to 3' 6"`, `at least 6'`, in the course's unit. */
export function houseWords(name: string, { least, most }: HouseLimit, unit: LengthUnit): string {
  const print = (value: number) => valueWords(quantityOf(name), value, unit);
  if (least !== undefined && most !== undefined) return checkWords.range(print(least), print(most));
  return least === undefined ? checkWords.atMost(print(most ?? 0)) : checkWords.atLeast(print(least));
}

/** What would be asked without a house rule, and by whom. */
export function bookWords(course: Course, name: string): string {
  const limit = limitsOf(withoutHouseRule(course, name))[name];
  if (limit === undefined) return checkWords.bookDoesNotSay;
  return checkWords.withoutIt(bandWords(limit, course.unit), limit.source);
}

export function withHouseRule(course: Course, name: string, rule: HouseLimit): Course {
  const { rulebook } = course;
  return { ...course, rulebook: { ...rulebook, house: { ...rulebook.house, [name]: rule } } };
}

export function withoutHouseRule(course: Course, name: string): Course {
  const { [name]: _, ...house } = course.rulebook.house;
  return { ...course, rulebook: { ...course.rulebook, house } };
}
