/** Plurals of English. Another language has its own file of texts, and its functions take the forms that it has. */
const RULES = new Intl.PluralRules('en');

/** A noun in the forms that a language tells apart; English has `one` and `other`. */
export type Forms = { readonly other: string } & Partial<Readonly<Record<Intl.LDMLPluralRule, string>>>;

/** The form of a noun for a number, by the rules of a language. */
export function formFor(count: number, forms: Forms, rules: Intl.PluralRules = RULES): string {
  return forms[rules.select(count)] ?? forms.other;
}

/** `1 pole`, `3 poles`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${formFor(count, { one, other: many })}`;
}
