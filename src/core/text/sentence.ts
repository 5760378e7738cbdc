/** text/ has the small parts of sentences and names that every module writes. It knows no unit and no course. */

/** The text with its first letter large. */
export function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The text with its first letter small, to stand inside a sentence. What stands for a shape, as in back-through L, stays. */
export function uncapitalized(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** "1, 3 and 4"; three or more in a row as "2 to 5". */
export function numberList(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const runs: number[][] = [];
  for (const number of sorted) {
    const last = runs.at(-1);
    if (last !== undefined && last.at(-1) === number - 1) last.push(number);
    else runs.push([number]);
  }
  return andList(
    runs.flatMap((run) => (run.length > 2 ? [`${run[0]} to ${run.at(-1)}`] : run.map((number) => String(number)))),
  );
}

const ENGLISH = new Intl.PluralRules('en');

/** A noun in the forms that a language tells apart; English has `one` and `other`. */
export type PluralForms = { readonly other: string } & { readonly [Form in Intl.LDMLPluralRule]?: string };

/** The form of a noun that goes with a number, by the rules of a language. */
export function pluralForm(count: number, forms: PluralForms, rules = ENGLISH): string {
  return forms[rules.select(count)] ?? forms.other;
}

/** `1 pole`, `3 poles`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${pluralForm(count, { one, other: many })}`;
}

/** "a, b and c". */
export function andList(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
