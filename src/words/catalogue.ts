/** All rooms of the catalogue, for tests and tools. The app's rooms import their own file, so that they load apart. */
import { appWords } from './app.ts';
import { byEarWords } from './by-ear.ts';
import { changeWords } from './change.ts';
import { dayWords } from './day.ts';
import { findingsWords } from './findings.ts';
import { handWords } from './hand.ts';
import { helpWords } from './help.ts';
import { postWords } from './post.ts';
import { rideWords } from './ride.ts';
import { terms } from './terms.ts';

export const catalogue = {
  terms,
  app: appWords,
  byEar: byEarWords,
  change: changeWords,
  day: dayWords,
  findings: findingsWords,
  hand: handWords,
  help: helpWords,
  post: postWords,
  ride: rideWords,
} as const;

/** What another language has to give for a part of the catalogue: other texts, and functions of the same parameters. */
export type Translated<Part> = Part extends string
  ? string
  : Part extends (...values: infer Values) => string
    ? (...values: Values) => string
    : { readonly [Key in keyof Part]: Translated<Part[Key]> };
