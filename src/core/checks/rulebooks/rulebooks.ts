import ewu from '../../../../assets/rulebooks/ewu.json' with { type: 'json' };
import groundPoles from '../../../../assets/rulebooks/ground-poles.json' with { type: 'json' };
import led from '../../../../assets/rulebooks/led.json' with { type: 'json' };
import muleAssociation from '../../../../assets/rulebooks/mule-association.json' with { type: 'json' };
import practice from '../../../../assets/rulebooks/practice.json' with { type: 'json' };
import stockHorse from '../../../../assets/rulebooks/stock-horse.json' with { type: 'json' };
import tradePress from '../../../../assets/rulebooks/trade-press.json' with { type: 'json' };
import type { Course, HouseLimit, Level, RuleChoice } from '../../course/course.ts';
import { horseById, STOCK_HORSE } from '../../horses/horses.ts';
import { FOOT, INCH, type Metres } from '../../measure/quantity.ts';
import { memoizeByIdentity } from '../../memo/by-identity.ts';
import type { Band, Limit, Limits, PrintedUnit, RuleBook } from '../check.ts';
import { LIMITS } from './limits.ts';

/** A book as it lies in assets/; tests/core/checks/rulebooks.test.ts reads every one against these types. */
const asBook = (file: unknown): RuleBook => file as RuleBook;

/** The rule books that a course can be judged by, the default first. */
export const RULEBOOKS: readonly RuleBook[] = [muleAssociation, tradePress, stockHorse, ewu, led, groundPoles].map(
  asBook,
);

/** Designers' practice: it applies where the book in force sets no limit, and cannot be chosen as a book. */
export const PRACTICE: RuleBook = asBook(practice);

/** Of a course whose book is not chosen yet: no book asks, so designers' practice and house rules are all there is. */
export const UNDECIDED: RuleBook = {
  id: 'undecided',
  title: 'Not decided yet',
  edition: 'only designers’ practice is asked',
  about: 'No rule book is chosen for this course yet. Only designers’ practice and the show’s house rules are asked.',
  limits: {},
};

/** What one of the printed unit is in metres, radians, seconds, or as a count. */
const UNITS: Readonly<Record<PrintedUnit, number>> = {
  in: INCH,
  ft: FOOT,
  cm: 0.01,
  m: 1,
  count: 1,
  degree: Math.PI / 180,
  s: 1,
};

/** The unit in which a house rule without a book's entry beside it is kept. */
const HOUSE_UNITS = { length: 'm', count: 'count', angle: 'degree', time: 's' } as const;

/** A book that can be chosen, or the want of one. */
export function rulebookById(id: string): RuleBook | undefined {
  return [...RULEBOOKS, UNDECIDED].find((book) => book.id === id);
}

/** The limit's band in SI units. */
export function bandOf(limit: Limit): Band {
  const unit = UNITS[limit.unit];
  return {
    ...(limit.least === undefined ? {} : { least: limit.least * unit }),
    ...(limit.most === undefined ? {} : { most: limit.most * unit }),
    ...(limit.multiples ? { multiples: true } : {}),
  };
}

/** An SI value in the unit in which the limit is printed. */
export function inPrintedUnit(limit: Limit, value: number): number {
  return value / UNITS[limit.unit];
}

/** What the trade builds for the limit of this name, SI: the book's word for it, else practice's; absent: nobody says. */
export function usualOf(name: string, { id }: RuleChoice): number | undefined {
  const usual = rulebookById(id)?.usual?.[name] ?? PRACTICE.usual?.[name];
  return usual === undefined ? undefined : usual.value * UNITS[usual.unit];
}

const practised = new Set(
  [PRACTICE.limits, ...Object.values(PRACTICE.levels ?? {})].flatMap((each) => Object.values(each)),
);

/** Whether it is designers' practice that asks, not the book in force. */
export function isPractice(limit: Limit): boolean {
  return practised.has(limit);
}

/** A house rule takes the place of the whole band it names, both ends; whether multiples count stays as in the book. */
function houseLimit(name: string, house: HouseLimit, book: Limit | undefined): Limit {
  const quantity = LIMITS[name]?.quantity ?? 'length';
  const unit = book?.unit ?? HOUSE_UNITS[quantity];
  const least = house.least === undefined ? {} : { least: house.least / UNITS[unit] };
  const most = house.most === undefined ? {} : { most: house.most / UNITS[unit] };
  return {
    ...least,
    ...most,
    unit,
    ...(book?.multiples ? { multiples: true } : {}),
    ...(book?.weight ? { weight: book.weight } : {}),
    source: `house rule: ${house.reason}`,
    grade: 'E',
    house: house.reason,
  };
}

/** Under this at the withers a horse is a pony: 1.48 m, as federations measure it (from memory). */
const PONY: Metres = 1.48;

/** What a book prints for this level and size of horse. */
function limitsFor(book: RuleBook | undefined, level: Level, isPony: boolean): Limits {
  return { ...book?.limits, ...(isPony ? book?.ponies : {}), ...book?.levels?.[level] };
}

/** A house rule on a band removes what the book recommends inside that band. */
const mergedLimits = memoizeByIdentity((choice: RuleChoice, level: Level, isPony: boolean): Limits => {
  const practised = limitsFor(PRACTICE, level, isPony);
  const asked = limitsFor(rulebookById(choice.id), level, isPony);
  const limits: Record<string, Limit> = { ...practised, ...asked };
  for (const [name, house] of Object.entries(choice.house)) {
    limits[name] = houseLimit(name, house, asked[name] ?? practised[name]);
    if (!(`${name}.recommended` in choice.house)) delete limits[`${name}.recommended`];
  }
  return limits;
});

/**
 * The limits in force: designers' practice, over it the chosen book, over it the show's house rules; of practice and
 * book what they print for the level and for a pony comes before what they print for all. A book stays one coherent
 * set: practice only fills names that the book does not print. An unknown book leaves practice and house rules.
 */
export function limitsOf({ rulebook, class: { level }, horse }: Pick<Course, 'rulebook' | 'class' | 'horse'>): Limits {
  const isPony = (horseById(horse) ?? STOCK_HORSE).withers.value < PONY;
  return mergedLimits(rulebook, level, isPony);
}
