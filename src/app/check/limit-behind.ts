import type { Finding, Limit, Limits, Quantity } from '../../core/checks/check.ts';
import { CHECKS } from '../../core/checks/checks.ts';
import { LIMITS } from '../../core/checks/rulebooks/limits.ts';
import { bandOf } from '../../core/checks/rulebooks/rulebooks.ts';
import { checkWords } from '../../words/check.ts';

/** How good a source is, in words; see the grades of `Limit`. */
export const SOURCE_WORDS: Readonly<Record<Limit['grade'], string>> = {
  A: checkWords.ruleText,
  B: checkWords.associationsOrCollegesAdvice,
  C: checkWords.tradePressOrTrainer,
  D: checkWords.forumOrBlog,
  E: checkWords.estimateOrCommonPractice,
};

export interface Behind {
  readonly name: string;
  readonly limit: Limit;
}

/** The limit that a finding quotes, of those that its check asks for; absent where the finding rests on none. */
export function limitBehind(finding: Finding, limits: Limits): Behind | undefined {
  const asked = CHECKS.find(({ id }) => id === finding.check)?.limits ?? [];
  const quoted = asked.flatMap((name): Behind[] => {
    const limit = limits[name];
    return limit !== undefined && finding.source.includes(limit.source) ? [{ name, limit }] : [];
  });
  return quoted.find(({ limit }) => isBand(limit, finding)) ?? quoted[0];
}

function isBand(limit: Limit, { allowed }: Finding): boolean {
  const band = bandOf(limit);
  return band.least === allowed?.least && band.most === allowed?.most;
}

/** What the measured value of a finding counts or measures. Of what rests on no limit, only the truck is counted. */
export function quantityOf(finding: Finding, behind: Behind | undefined): Quantity {
  if (behind !== undefined) return LIMITS[behind.name]?.quantity ?? 'length';
  return finding.check === 'truck' || finding.check === 'mandatory' ? 'count' : 'length';
}
