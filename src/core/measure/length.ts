import { capitalized } from '../text/sentence.ts';
import { type Amount, plainText, readAmount, unreadable } from './amount.ts';
import { INCH, type LengthUnit, type Metres, type Reading } from './quantity.ts';

const EXAMPLE = `a length such as 6' 3 1/2", 75 in or 1.9 m`;
/** Nothing in an arena is longer. */
const LONGEST: Metres = 10_000;

type UnitName = 'ft' | 'in' | 'm' | 'cm' | 'mm';

/** Sizes are counted in tenths of a millimetre, a whole number in every unit: so 6 ft is exactly 1.8288 m. */
const TENTHS = 10_000;
/** In a text the units come from large to small, by `rank`. */
const UNITS: Readonly<
  Record<UnitName, { size: number; system: LengthUnit; rank: number; single: string; plural: string }>
> = {
  ft: { size: 3048, system: 'ft', rank: 0, single: 'foot', plural: 'feet' },
  in: { size: 254, system: 'ft', rank: 1, single: 'inch', plural: 'inches' },
  m: { size: 10_000, system: 'm', rank: 0, single: 'metre', plural: 'metres' },
  cm: { size: 100, system: 'm', rank: 1, single: 'centimetre', plural: 'centimetres' },
  mm: { size: 10, system: 'm', rank: 2, single: 'millimetre', plural: 'millimetres' },
};

const SPELLINGS: Readonly<Record<string, UnitName>> = {
  "'": 'ft',
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  '"': 'in',
  in: 'in',
  ins: 'in',
  inch: 'in',
  inches: 'in',
  m: 'm',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
  cm: 'cm',
  centimetre: 'cm',
  centimetres: 'cm',
  centimeter: 'cm',
  centimeters: 'cm',
  mm: 'mm',
  millimetre: 'mm',
  millimetres: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
};

type ParsedAmount = Extract<Amount, { kind: 'amount' }>;
interface Part {
  readonly amount: ParsedAmount;
  readonly unit: UnitName | undefined;
}
type ReadingError = { readonly kind: 'refused'; readonly why: string };

function readingError(why: string): ReadingError {
  return { kind: 'refused', why };
}

const UNIT = /^ ?('|"|[a-z]+\.?)/;
/** What may stand between feet and inches: `6'-3"`, `6 feet and 3 inches`, `6', 3"`. */
const SEPARATOR = /^ ?(-|,|and\b)? ?/;

function parts(text: string): readonly Part[] | ReadingError {
  const found: Part[] = [];
  let rest = text;
  while (rest.trim() !== '') {
    if (found.length > 0) rest = rest.replace(SEPARATOR, '');
    const next = readAmount(rest);
    if (next.kind === 'refused') return next;
    if (next.kind === 'none') return readingError(`"${rest.trim()}" is not part of a length. Write ${EXAMPLE}.`);
    const spelled = UNIT.exec(next.rest);
    const word = spelled?.[1]?.replace('.', '');
    const unit = word === undefined ? undefined : SPELLINGS[word];
    if (word !== undefined && unit === undefined && word !== 'and') {
      return readingError(`"${word}" is not a unit that is read here. Write ft, in, m, cm or mm.`);
    }
    found.push({ amount: next, unit });
    rest = next.rest.slice(unit === undefined ? 0 : (spelled?.[0].length ?? 0));
    if (unit === undefined && rest.trim() !== '') return readingError(unitless(next, rest));
  }
  return found;
}

function unitless(first: ParsedAmount, rest: string): string {
  const next = readAmount(rest);
  if (next.kind !== 'amount') return `"${rest.trim()}" after ${first.text} is not a unit. Write ft, in, m, cm or mm.`;
  const split = next.value < 12 ? `${first.text}' ${next.text}"` : `${first.text}${next.text} with its unit`;
  return `${first.text} and ${next.text} stand side by side without a unit. Write ${split}.`;
}

/** Why parts cannot stand together; undefined when they can. */
function unitMismatch(found: readonly Part[]): string | undefined {
  for (let i = 1; i < found.length; i += 1) {
    const [before, after] = [found[i - 1], found[i]];
    if (!before?.unit || !after?.unit) continue;
    const [large, small] = [UNITS[before.unit], UNITS[after.unit]];
    if (large.system !== small.system) {
      return `${large.plural} and ${small.plural} are mixed. Write the whole length in one of the two.`;
    }
    if (large.rank >= small.rank) {
      return `${small.plural} cannot follow ${large.plural}. Write the larger unit first, each once.`;
    }
    if (!before.amount.whole) {
      return `${before.amount.text} ${large.plural} has a fraction and ${small.plural} follow. Write the fraction in the last unit only.`;
    }
    const most = Math.round(large.size / small.size);
    if (after.amount.value >= most) {
      const total = before.amount.value * large.size + after.amount.value * small.size;
      const right = printLength(total / TENTHS, large.system);
      return `${after.amount.text} ${small.plural} make a ${large.single} or more. Write ${right} if that is meant.`;
    }
  }
  return undefined;
}

/** The last part of `6' 3` is inches; a text of one bare number is in the course's unit. */
function withUnits(found: readonly Part[], unit: LengthUnit): { parts: readonly Part[]; note?: string } | ReadingError {
  const last = found.at(-1);
  if (last === undefined || last.unit !== undefined) return { parts: found };
  const { text } = last.amount;
  const before = found.at(-2);
  if (before === undefined) {
    return { parts: [{ ...last, unit }], note: `${text} was read as ${text} ${UNITS[unit].plural}.` };
  }
  if (before.unit === 'ft') {
    return { parts: [...found.slice(0, -1), { ...last, unit: 'in' }], note: `${text} was read as inches.` };
  }
  return readingError(`${text} at the end has no unit. Write ft, in, m, cm or mm after it.`);
}

/**
 * Reads a length as people write it: `6'`, `6' 3 1/2"`, `6ft 3in`, `75½ in`, `1.9m`, `190 cm`, `-6"`. A bare number takes
 * the given unit and says so. What could mean two things is refused, with what would be right.
 */
export function readLength(text: string, unit: LengthUnit): Reading<Metres> {
  const unread = unreadable(text, EXAMPLE);
  if (unread !== undefined) return readingError(unread);
  const plain = plainText(text);
  const sign = plain.startsWith('-') ? -1 : 1;
  const found = parts(plain.replace(/^[+-] ?/, ''));
  if ('kind' in found) return found;
  const complete = withUnits(found, unit);
  if ('kind' in complete) return complete;
  const why = unitMismatch(complete.parts);
  if (why !== undefined) return readingError(capitalized(why));
  const total =
    complete.parts.reduce((sum, part) => sum + part.amount.value * UNITS[part.unit ?? unit].size, 0) / TENTHS;
  if (total > LONGEST)
    return readingError(`${text.trim()} is more than ${LONGEST / 1000} km. Nothing in an arena is so long.`);
  const value = sign * total + 0;
  return complete.note === undefined ? { kind: 'read', value } : { kind: 'read', value, note: complete.note };
}

const QUARTERS = ['', '¼', '½', '¾'] as const;
const QUARTERS_PER_INCH = 4;
const QUARTERS_PER_FOOT = 48;

/** To the nearest quarter inch as `6' 3½"`, or to the nearest centimetre as `1.90 m`. What is not finite is a dash. */
export function printLength(value: Metres, unit: LengthUnit): string {
  if (!Number.isFinite(value)) return '–';
  return unit === 'ft' ? feetAndInches(value) : metresAndCentimetres(value);
}

function feetAndInches(value: Metres): string {
  const quarters = Math.round((Math.abs(value) / INCH) * QUARTERS_PER_INCH);
  const sign = value < 0 && quarters > 0 ? '−' : '';
  const feet = Math.floor(quarters / QUARTERS_PER_FOOT);
  const inches = Math.floor((quarters % QUARTERS_PER_FOOT) / QUARTERS_PER_INCH);
  const part = QUARTERS[quarters % QUARTERS_PER_INCH] ?? '';
  if (feet > 0 && inches === 0 && part === '') return `${sign}${feet}'`;
  const small = inches === 0 && part !== '' && feet === 0 ? `${part}"` : `${inches}${part}"`;
  return feet === 0 ? `${sign}${small}` : `${sign}${feet}' ${small}`;
}

function metresAndCentimetres(value: Metres): string {
  const centimetres = Math.round(Math.abs(value) * 100);
  const sign = value < 0 && centimetres > 0 ? '−' : '';
  return `${sign}${(centimetres / 100).toFixed(2)} m`;
}
