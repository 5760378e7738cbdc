/**
 * Text as JSON, or where it breaks. Each browser words the error of `JSON.parse` differently, so the place is found
 * here.
 */

export type ParsedJson =
  | { readonly kind: 'read'; readonly value: unknown }
  | { readonly kind: 'refused'; readonly why: string };

/** Where a text stops being JSON, and what would be right there. */
export interface JsonFault {
  readonly at: number;
  readonly wanted: string;
}

/** No file that people keep is nested deeper; without a bound a file could overflow the stack. */
const DEEPEST = 100;

export function parsedJson(text: string): ParsedJson {
  const fault = firstJsonFault(text);
  if (fault === undefined) return { kind: 'read', value: JSON.parse(text) };
  const before = text.slice(0, fault.at).split('\n');
  const place = `line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}`;
  if (fault.at >= text.trimEnd().length) {
    return {
      kind: 'refused',
      why: `The file is cut off: it ends at ${place}, where ${fault.wanted} would be right. Take a complete copy of it.`,
    };
  }
  const found = text.slice(fault.at, fault.at + 12).split('\n')[0] || '↵';
  return {
    kind: 'refused',
    why: `The file is not JSON: at ${place} stands ‘${found}’, where ${fault.wanted} would be right.`,
  };
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /(?:true|false|null)/y;

function matchEnd(pattern: RegExp, text: string, at: number): number | undefined {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : undefined;
}

/** The end of the string that starts at `at`, or where it breaks. */
function stringEnd(text: string, at: number): number | JsonFault {
  for (let i = at + 1; i < text.length; i += 1) {
    const sign = text.charAt(i);
    if (sign === '"') return i + 1;
    if (sign < ' ') return unclosed(i);
    if (sign !== '\\') continue;
    const escaped = /^\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/.exec(text.slice(i, i + 6));
    if (escaped === null) return CUT_ESCAPE.test(text.slice(i, i + 7)) ? unclosed(text.length) : badEscape(i);
    i += escaped[0].length - 1;
  }
  return unclosed(text.length);
}

/** An escape that the end of the text cut off. */
const CUT_ESCAPE = /^\\(?:u[0-9a-fA-F]{0,3})?$/;

function unclosed(at: number): JsonFault {
  return { at, wanted: 'a closing quote' };
}

function badEscape(at: number): JsonFault {
  return { at, wanted: 'an escape such as \\n or \\u00bd' };
}

/** The end of a string, number or word that starts at `at`, or where it breaks. */
function scalarEnd(text: string, at: number): number | JsonFault {
  if (text[at] === '"') return stringEnd(text, at);
  return matchEnd(NUMBER, text, at) ?? matchEnd(WORD, text, at) ?? { at, wanted: 'a value' };
}

/** What may come next: a value, the first or a later member of a list or group, or what follows a value. */
type Expectation = 'value' | 'first-item' | 'first-key' | 'key' | 'after';

/** What would be right in place of a name that JSON allows and that would be lost when it is read; adds it to those seen. */
function nameFault(name: string, seen: Set<string> | undefined): string | undefined {
  if (name === '__proto__') return 'another field name';
  if (seen?.has(name)) return 'a field name that does not stand there already';
  seen?.add(name);
  return undefined;
}

/** The first place where the text is not JSON; undefined when it is JSON throughout. */
export function firstJsonFault(text: string): JsonFault | undefined {
  const open: ('{' | '[')[] = [];
  const names: Set<string>[] = [];
  let expects: Expectation = 'value';
  let at = 0;
  for (;;) {
    while (/[ \t\n\r]/.test(text.charAt(at))) at += 1;
    const sign = text.charAt(at);
    const closes = open.at(-1) === '{' ? '}' : ']';
    if (expects === 'after') {
      if (open.length === 0) return sign === '' ? undefined : { at, wanted: 'the end of the file' };
      if (sign === closes) {
        if (open.pop() === '{') names.pop();
      } else if (sign === ',') expects = open.at(-1) === '{' ? 'key' : 'value';
      else return { at, wanted: `a comma or ${closes}` };
      at += 1;
    } else if ((expects === 'first-item' || expects === 'first-key') && sign === closes) {
      if (open.pop() === '{') names.pop();
      expects = 'after';
      at += 1;
    } else if (expects === 'key' || expects === 'first-key') {
      const end = sign === '"' ? stringEnd(text, at) : { at, wanted: 'a field name in double quotes' };
      if (typeof end !== 'number') return end;
      const fault = nameFault(JSON.parse(text.slice(at, end)) as string, names.at(-1));
      if (fault !== undefined) return { at, wanted: fault };
      at = end;
      while (/[ \t\n\r]/.test(text.charAt(at))) at += 1;
      if (text.charAt(at) !== ':') return { at, wanted: 'a colon' };
      expects = 'value';
      at += 1;
    } else if (sign === '{' || sign === '[') {
      if (open.length === DEEPEST) return { at, wanted: `nothing nested deeper than ${DEEPEST}` };
      open.push(sign);
      if (sign === '{') names.push(new Set());
      expects = sign === '{' ? 'first-key' : 'first-item';
      at += 1;
    } else {
      const end = scalarEnd(text, at);
      if (typeof end !== 'number') return end;
      expects = 'after';
      at = end;
    }
  }
}
