/** What a parameter holds once read: a number in SI units, or the id of a choice. */
export type Value = number | string;
export type Values = Readonly<Record<string, Value>>;

/** What is the same for every parameter. */
interface Labelled {
  readonly label: string;
  /** One sentence, where the label is not enough. */
  readonly says?: string;
  /**
   * Added after the first files: those without it mean the usual value, and are complete. Whoever reads stored values
   * takes the usual one where it is missing.
   */
  readonly later?: true;
}

/** A number that a designer can set. `length` in metres, `angle` in radians, `fraction` 0 … 1, `count` whole. */
export interface NumberParam extends Labelled {
  readonly kind: 'length' | 'angle' | 'count' | 'fraction';
  readonly usual: number;
  readonly least: number;
  readonly most: number;
}

/** One of several: `options` maps what is stored to what is shown. */
export interface ChoiceParam extends Labelled {
  readonly kind: 'choice';
  readonly usual: string;
  readonly options: Readonly<Record<string, string>>;
}

export type Param = NumberParam | ChoiceParam;

/** Keys are camelCase and are written into files; the command line spells them with hyphens. */
export type Params = Readonly<Record<string, Param>>;

/** The usual values of a kind, with the given ones in their place. */
export function completeValues(params: Params, given: Values = {}): Values {
  return Object.fromEntries(Object.entries(params).map(([key, param]) => [key, given[key] ?? param.usual]));
}

/** The number under a key. Values that a kind is given are complete, so a missing one is a programmer's mistake. */
export function numberValue(values: Values, key: string): number {
  const value = values[key];
  if (typeof value !== 'number')
    throw new Error(`numberValue: "${key}" must be a number, got ${JSON.stringify(value)}`);
  return value;
}

/** The chosen option under a key. */
export function choiceValue(values: Values, key: string): string {
  const value = values[key];
  if (typeof value !== 'string')
    throw new Error(`choiceValue: "${key}" must be an option's id, got ${JSON.stringify(value)}`);
  return value;
}
