/**
 * storage/ saves courses in the browser. Its failures (no space, private windows, another tab) are caught here and
 * become a sentence with the next step; nothing in storage/ throws to its caller or leaves a page blank.
 */

/** What went wrong and what to do, or nothing. */
export type ErrorMessage = string | undefined;

const TO_FILE = 'Save the course to a file so that it is not lost.';

const KNOWN: Readonly<Record<string, string>> = {
  QuotaExceededError: 'The browser has no room left for this page. Delete courses that are no longer needed.',
  SecurityError: 'The browser does not let this page keep anything. Allow site data for it, and reload.',
  InvalidStateError: 'The browser closed its store, perhaps for a newer Polewright in another tab. Reload this page.',
  VersionError: 'A newer Polewright has saved courses in this browser. Reload this page to get it.',
  NetworkError: 'A part of Polewright could not be loaded. See to the connection; the next change tries again.',
  NotFoundError: 'The courses in this browser were cleared while this page was open. Reload it.',
};

export function failureName(failure: unknown): string {
  return failure instanceof Error || failure instanceof DOMException ? failure.name : 'Error';
}

/** A failure of the store as a sentence: what happened, and what keeps the work safe. */
export function failureWords(failure: unknown): string {
  const name = failureName(failure);
  const known = Object.hasOwn(KNOWN, name) ? KNOWN[name] : undefined;
  return `${known ?? `The browser could not use its store (${name}).`} ${TO_FILE}`;
}
