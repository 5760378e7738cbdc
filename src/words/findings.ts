/** The words round the findings: the list, its cards, and the ways to and from them. The findings themselves are said in core/checks. */
export const findingsWords = {
  nothingToCheck: 'There is nothing to check yet. Set the first obstacle.',
  checking: 'Checking…',
  allMet:
    'Nothing to fix: every check that the rule book gives a limit for is met. Walk it once with the tape all the same.',
  noneOpen: 'No finding is open.',
  weighed: (weight: string, count: number) => `${weight}: ${count}`,
  waived: (count: number) => `Waived: ${count}`,
  judge: 'The rule book in force, the show’s officials and the judge decide, not this list.',
  grouping: 'Group the findings',
  groupings: { obstacle: 'By obstacle', check: 'By check' },
  group: (title: string, count: number) => `${title} (${count})`,
  back: (stage: string) => `Back to ${stage}`,
  keys: 'Next finding . before ,',

  waivedTag: 'waived',
  standsBecause: 'It stands because:',
  source: (source: string) => `Source: ${source}`,
  houseRule: 'house rule',
  readThere: 'Read it there',
  howRead: 'How it is read here',
  more: (count: number) => `and ${count} more like it`,
  trying: 'Trying fixes…',
  show: 'Show in the arena',
  waive: 'Waive',
  withReason: ' with a reason',
  unwaive: 'Take the waiver back',
  stepWaive: (says: string) => `Waive: ${says}`,
  stepUnwaive: (says: string) => `Open again: ${says}`,

  /** Said when a key goes on to a finding while the focus stays in the arena. */
  stepped: (place: number, count: number, says: string) => `Finding ${place} of ${count}: ${says} Press I to open it.`,
  noFindings: 'There are no findings',
} as const;
