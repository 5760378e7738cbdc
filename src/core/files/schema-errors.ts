import type * as z from 'zod/mini';
import { capitalized } from '../text/sentence.ts';
import { isJsonObject, type JsonPath, jsonPathWords, jsonValueWords, valueAt } from './json-path.ts';

type Issue = z.core.$ZodIssue;

const EXPECTED: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'a text',
  array: 'a list',
  tuple: 'a list of at least one',
  object: 'a group of fields',
  record: 'a group of fields',
};

/** What a text with a form must look like, by the field that holds it. */
function formWords(path: JsonPath): string {
  if (path.at(-1) === 'date') return 'a date such as 2027-05-01, or an empty text,';
  if (path.at(-1) === 'piece') return 'a piece of an obstacle such as fan-1/pole-2';
  return 'an id of lower-case letters, digits and hyphens';
}

/** What a value that may be one of several must be, by the field that holds it. */
function choiceWords(path: JsonPath): string {
  if (path.at(-2) === 'grips') return 'a piece (and where along it) or a wall';
  if (path.at(-3) === 'stations') return 'one of cross, reach, turn';
  return 'a number or a text';
}

/** What would be right, as the end of a sentence. */
function rightWords(issue: Issue, path: JsonPath): string {
  switch (issue.code) {
    case 'invalid_type':
      return EXPECTED[issue.expected] ?? `a value of the kind ${issue.expected}`;
    case 'too_big':
      return issue.origin === 'string' || issue.origin === 'array'
        ? `at most ${issue.maximum} ${issue.origin === 'string' ? 'signs' : 'items'}`
        : `${issue.maximum} or less`;
    case 'too_small':
      return issue.origin === 'array' ? `at least ${issue.minimum} item` : `${issue.minimum} or more`;
    case 'invalid_value':
      return issue.values.length === 1
        ? String(issue.values[0])
        : `one of ${issue.values.map((value) => String(value)).join(', ')}`;
    case 'invalid_format':
      return formWords(path);
    case 'invalid_union':
      return choiceWords(path);
    default:
      return 'something else';
  }
}

/** The issue inside a union that fits what stands there best: the branch whose fields are all there. */
function closestBranchIssue(issue: Issue, found: unknown): Issue | undefined {
  if (issue.code !== 'invalid_union' || !isJsonObject(found)) return undefined;
  const branches = issue.errors.filter((errors) => errors.every((error) => error.path.length > 0));
  return branches.length === 1 ? branches[0]?.[0] : undefined;
}

function issueSentence(file: unknown, issue: Issue, above: JsonPath): string {
  const path = [...above, ...issue.path];
  const found = valueAt(file, path);
  const deeper = closestBranchIssue(issue, found);
  if (deeper !== undefined) return issueSentence(file, deeper, path);
  const place = capitalized(jsonPathWords(file, path));
  if (issue.code === 'unrecognized_keys') {
    const fields = issue.keys.map((key) => JSON.stringify(key)).join(', ');
    return `${place} has ${fields}, which this version does not know and would lose.`;
  }
  const right = rightWords(issue, path);
  if (found === undefined) return `${place} is missing; ${right} belongs there.`;
  return `${place} is ${jsonValueWords(found)}; ${right} would be right.`;
}

/** One sentence for each fault that the schema found: where, what was found, what would be right. */
export function schemaErrors(file: unknown, issues: readonly Issue[]): readonly string[] {
  return issues.map((issue) => issueSentence(file, issue, []));
}
