import type { Finding, Limit } from '../core/checks/check.ts';
import { bandWords } from '../core/checks/findings/finding-words.ts';
import type { BookComparison, LimitDifference } from '../core/checks/results/compared.ts';
import type { LengthUnit } from '../core/measure/quantity.ts';
import type { Io } from './io.ts';
import { table } from './table.ts';

/** A finding as a document has it: fixes as their sentences, and which of them are safe. */
export function findingDocument({ remedies, ...finding }: Finding) {
  return {
    ...finding,
    remedies: remedies.map(({ says }) => says),
    safe: remedies.flatMap(({ says, safe }) => (safe === true ? [says] : [])),
  };
}

export function comparisonDocument({ a, b, both, changed, onlyA, onlyB, limits }: BookComparison) {
  return {
    books: [a.id, b.id],
    both: both.map(({ id }) => id),
    changed: changed.map((pair) => ({ first: findingDocument(pair.a), second: findingDocument(pair.b) })),
    onlyFirst: onlyA.map(findingDocument),
    onlySecond: onlyB.map(findingDocument),
    limits,
  };
}

function limitWords(limit: Limit | undefined, unit: LengthUnit): string {
  if (limit === undefined) return 'does not say';
  if (limit.unit !== 'count' || limit.least === limit.most) return bandWords(limit, unit);
  // A count of none or one is a yes or a no.
  if (limit.most === 0) return 'no';
  return limit.least === 1 && limit.most === undefined ? 'yes' : bandWords(limit, unit);
}

function differenceRow({ title, a, b }: LimitDifference, unit: LengthUnit): readonly string[] {
  return [title, limitWords(a, unit), limitWords(b, unit)];
}

/** Two rule books on the same course: what only one of them finds, and where they print different limits. */
export function printComparison(
  io: Io,
  { a, b, both, changed, onlyA, onlyB, limits }: BookComparison,
  unit: LengthUnit,
): void {
  io.out(`\n${a.title} beside ${b.title}: ${both.length} found by both alike\n`);
  for (const [book, findings] of [
    [a, onlyA],
    [b, onlyB],
  ] as const) {
    if (findings.length > 0) io.out(`\nOnly by ${book.title}:\n`);
    for (const { weight, says } of findings) io.out(`  ${weight.toUpperCase()}  ${says}\n`);
  }
  for (const pair of changed) io.out(`\nBoth, but not alike:\n  ${pair.a.says}\n  ${pair.b.says}\n`);
  const rows = limits.map((each) => differenceRow(each, unit));
  io.out(`\n${table(['limit', a.title, b.title], rows)}`);
}
