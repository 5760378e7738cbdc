/** What is said about a course in an address: where one was opened, and where one is handed out. */
export const linkWords = {
  // Linked notice.
  label: 'A course from a link',
  cameInAddress: 'It came in the link, and nothing was sent to anybody. What you change is yours, in this browser.',
  close: 'Close this message',
  notOpened: 'The link was not opened',
  readerNotLoaded:
    'The part of Polewright that reads links could not be loaded. Is there a connection? Reload the page to try again.',
  stillHere: 'What was open here before is still here, unchanged.',

  // Copy link.
  copyLink: 'Copy a link…',
  linkCopied: 'The link is copied',
  linkToCopy: 'A link to this course',
  linkHolds: (signs: number) =>
    `It is ${signs} signs long and holds the shown layout, its arena and its class. Whoever opens it sees the ride play, and what they change is theirs. Truck list, day and the names of riders are not in it.`,
  onlyHere: 'Polewright runs on this computer only, so the link opens only here.',
  linkField: 'Link',
  linkNotMade: (why: string) => `The link could not be made: ${why}`,
} as const;
