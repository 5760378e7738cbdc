/** All rooms of the catalogue, for tests and tools. The app's rooms import their own file, so that they load apart. */
import { appWords } from './app.ts';
import { arenaWords } from './arena.ts';
import { byEarWords } from './by-ear.ts';
import { changeWords } from './change.ts';
import { checkWords } from './check.ts';
import { dayWords } from './day.ts';
import { labels, messages, STAGE_NAMES } from './desk.ts';
import { deskNames } from './desk-names.ts';
import { fileWords } from './file.ts';
import { findingsWords } from './findings.ts';
import { emptyWords, hintWords, newCourseWords, paletteWords, starterWords } from './first-visit.ts';
import { goWords } from './go.ts';
import { handWords } from './hand.ts';
import { helpWords } from './help.ts';
import { keyWords } from './keys.ts';
import { linkWords } from './link.ts';
import { postWords } from './post.ts';
import { rideWords } from './ride.ts';
import { scoreWords } from './score.ts';
import { setWords } from './set.ts';
import { setoutWords } from './setout.ts';
import { shellWords } from './shell.ts';
import { stripWords } from './strip.ts';
import { terms } from './terms.ts';

export const catalogue = {
  terms,
  app: appWords,
  arena: arenaWords,
  byEar: byEarWords,
  change: changeWords,
  check: checkWords,
  day: dayWords,
  desk: { STAGE_NAMES, messages, labels },
  deskNames,
  file: fileWords,
  findings: findingsWords,
  firstVisit: { newCourseWords, starterWords, emptyWords, paletteWords, hintWords },
  go: goWords,
  hand: handWords,
  help: helpWords,
  keys: keyWords,
  link: linkWords,
  post: postWords,
  ride: rideWords,
  score: scoreWords,
  set: setWords,
  setout: setoutWords,
  shell: shellWords,
  strip: stripWords,
} as const;

/** What another language has to give for a part of the catalogue: other texts, and functions of the same parameters. */
export type Translated<Part> = Part extends string
  ? string
  : Part extends (...values: infer Values) => infer Says
    ? (...values: Values) => Translated<Says>
    : { readonly [Key in keyof Part]: Translated<Part[Key]> };
