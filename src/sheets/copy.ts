/** The designer's own copy: the pattern, then what was found, what was waived and why, and what the book leaves open. */
import type { Finding, Weight } from '../core/checks/check.ts';
import { closerFindingsOf, silentLimits } from '../core/checks/checks.ts';
import { unwaivedFindings } from '../core/checks/results/waived.ts';
import { LIMITS } from '../core/checks/rulebooks/limits.ts';
import type { Survey } from '../core/survey.ts';
import type { TextItem } from './flow.ts';
import { listPages } from './list-pages.ts';
import { pattern } from './pattern.ts';
import type { PageOptions, Pages, Sheet, TooBig } from './sheet.ts';
import { staleWords } from './stale-words.ts';
import { substitutionsOf } from './substitutions.ts';
import { rulebookInWords } from './title-block.ts';

/** Letter height, mm: a list for one person, so smaller than a pattern on a wall. */
const FONT_SIZE = 3.5;

const WEIGHTS: readonly Weight[] = ['must', 'should', 'note'];
const WEIGHT_WORDS: Readonly<Record<Weight, string>> = {
  must: 'Must be fixed',
  should: 'Should be looked at',
  note: 'Worth knowing',
};

function heading(text: string): TextItem {
  return { kind: 'heading', text };
}

function numberedItems(texts: readonly string[], from: number): readonly TextItem[] {
  return texts.map((text, i): TextItem => ({ kind: 'paragraph', text, hang: `${from + i + 1}.` }));
}

function withFullStop(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** The open findings by weight, numbered through. */
function openItems(open: readonly Finding[]): readonly TextItem[] {
  if (open.length === 0) return [heading('Findings'), { kind: 'paragraph', text: 'Nothing is open.' }];
  let count = 0;
  return WEIGHTS.flatMap((weight) => {
    const own = open.filter((finding) => finding.weight === weight);
    if (own.length === 0) return [];
    const items = numberedItems(
      own.map(({ says, because, source }) => `${says} ${because} Source: ${withFullStop(source)}`),
      count,
    );
    count += own.length;
    return [heading(`${WEIGHT_WORDS[weight]} (${own.length})`), ...items];
  });
}

function waivedItems(waived: readonly Finding[], from: number): readonly TextItem[] {
  if (waived.length === 0) return [];
  const texts = waived.map(
    ({ says, weight, source, waived: reason }) =>
      `${says} Waived, because: ${withFullStop(reason ?? '')} ${WEIGHT_WORDS[weight]} otherwise. Source: ${withFullStop(source)}`,
  );
  return [heading(`Waived by the designer (${waived.length})`), ...numberedItems(texts, from)];
}

/** The designer's own sentences that were written before the course was changed. */
function staleItems(survey: Survey): readonly TextItem[] {
  const stale = staleWords(survey);
  if (stale.length === 0) return [];
  const items = stale.map(
    ({ number, words, said, says }): TextItem => ({
      kind: 'paragraph',
      text: `Posted: “${words}” Written when the course said: “${said}” It now says: “${says}”`,
      hang: `${number}.`,
    }),
  );
  return [heading(`Own words to look at again (${stale.length})`), ...items];
}

/** What neither the book nor designers' practice sets: nothing was checked there. */
function silentItems(survey: Survey): readonly TextItem[] {
  const titles = [...new Set(silentLimits(survey).map(({ limit }) => LIMITS[limit]?.title ?? limit))];
  if (titles.length === 0) return [];
  return [
    heading('What this book does not say'),
    { kind: 'paragraph', text: `Nothing was checked here: ${titles.map((title) => title.toLowerCase()).join('; ')}.` },
  ];
}

function itemsOf(survey: Survey): readonly TextItem[] {
  const findings = closerFindingsOf(survey);
  const open = unwaivedFindings(findings);
  const waived = findings.filter((finding) => finding.waived !== undefined);
  const judged = `Judged by ${rulebookInWords(survey.course)}, ridden by: ${survey.horse.title}.`;
  const caution = 'The rule book in force, the show’s officials and the judge decide. This list only helps to look.';
  return [
    { kind: 'paragraph', text: judged },
    ...openItems(open),
    ...waivedItems(waived, open.length),
    ...staleItems(survey),
    ...silentItems(survey),
    heading('Please note'),
    { kind: 'paragraph', text: caution },
  ];
}

function draw(survey: Survey, options: PageOptions): Pages | TooBig {
  const drawn = pattern.draw(survey, options);
  if (drawn.kind === 'too-big') return drawn;
  const [first, ...rest] = drawn.pages;
  const list = listPages(itemsOf(survey), {
    course: survey.course,
    paper: first,
    fontSize: FONT_SIZE,
    name: 'Findings',
    about: 'findings and waivers, for the designer',
    remark: 'Designer’s copy: not for posting.',
  });
  const pages: Pages['pages'] = [first, ...rest, ...list];
  return {
    ...drawn,
    title: drawn.title.replace(/^Pattern/, 'Designer’s copy'),
    pages,
    substitutions: substitutionsOf(pages),
  };
}

export const designersCopy: Sheet = { id: 'copy', title: 'Designer’s copy', draw };
