/** A number as people write it, and where the text goes on after it. */
export type Amount =
  | {
      readonly kind: 'amount';
      readonly value: number;
      /** As written, for messages. */
      readonly text: string;
      /** Whether it is a whole number without fraction or decimals. */
      readonly whole: boolean;
      readonly rest: string;
    }
  | { readonly kind: 'none' }
  | { readonly kind: 'refused'; readonly why: string };

/** A larger number is a slip, not a measure. */
const LONGEST = 60;

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅙': '1/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** The text with one sign for each thing that keyboards and phones write in several ways. */
export function plainText(text: string): string {
  return text
    .replace(/[½⅓⅔¼¾⅕⅙⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign]}`)
    .replace(/[⁄∕]/g, '/')
    .replace(/[−–—‐‑]/g, '-')
    .replace(/[′’‘ʹʼ´`‵]/g, "'")
    .replace(/[″”“„ʺ‶]/g, '"')
    .replace(/''/g, '"')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
}

/** Why a text cannot be read at all, before looking at what it is; undefined when it may be. */
export function unreadable(text: string, example: string): string | undefined {
  if (text.trim() === '') return `Nothing is written. Write ${example}.`;
  if (text.length > LONGEST) return `This is ${text.length} signs long; ${LONGEST} is the most. Write ${example}.`;
  if (/\d\s*e\s*[+-]?\d/i.test(text)) return `${text.trim()} is written with a power of ten. Write the number in full.`;
  return undefined;
}

const FRACTION = /^ *(\d+) ?\/ ?(\d+)/;
const NUMBER = /^ *(\d+(?:[.,]\d*)?|[.,]\d+)(?:(?: | ?- ?)(\d+) ?\/ ?(\d+))?/;

/** Reads one amount from the start of a plain text: `6`, `6.5`, `6,5`, `.5`, `1/2`, `3 1/2`, `3-1/2`. */
export function readAmount(text: string): Amount {
  const fraction = FRACTION.exec(text);
  if (fraction) return fractionAmount(fraction, text);
  const found = NUMBER.exec(text);
  const digits = found?.[1];
  if (!found || digits === undefined) return { kind: 'none' };
  const rest = text.slice(found[0].length);
  const written = found[0].trim();
  const second = /^[.,]\d[.,\d]*/.exec(rest);
  if (second) {
    return { kind: 'refused', why: `${written}${second[0]} has two decimal signs. Write it with one, as in 1234.5.` };
  }
  if (/,\d{3}$/.test(digits)) {
    const [whole, decimals] = digits.split(',');
    const plain = `${whole || '0'}.${decimals} or ${whole}${decimals}`;
    return { kind: 'refused', why: `The comma in ${digits} may stand for decimals or for thousands. Write ${plain}.` };
  }
  const base = Number(digits.replace(',', '.'));
  if (found[2] === undefined) {
    return { kind: 'amount', value: base, text: written, whole: /^\d+$/.test(digits), rest };
  }
  const [part, share] = [Number(found[2]), Number(found[3])];
  if (!/^\d+$/.test(digits)) {
    return {
      kind: 'refused',
      why: `${written} has decimals and a fraction. Write one of the two, as in 3.5 or 3 1/2.`,
    };
  }
  if (share === 0 || part >= share) return { kind: 'refused', why: improperReason(part, share) };
  return { kind: 'amount', value: base + part / share, text: written, whole: false, rest };
}

function fractionAmount(match: RegExpExecArray, text: string): Amount {
  const [part, share] = [Number(match[1]), Number(match[2])];
  if (share === 0 || part >= share) return { kind: 'refused', why: improperReason(part, share) };
  const rest = text.slice(match[0].length);
  return { kind: 'amount', value: part / share, text: match[0].trim(), whole: false, rest };
}

/** `31/2` may be a slip for `3 1/2`, so a fraction that is more than one is not read. */
function improperReason(part: number, share: number): string {
  if (share === 0) return `${part}/0 divides by nothing. Write a fraction such as 1/2.`;
  return `${part}/${share} is one or more, which a fraction here may not be. Write it as in 3 1/2 or 3.5.`;
}
