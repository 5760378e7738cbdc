/** What is only heard, or only reached by keys: the words for the screen reader and the ways through the page. */
import { andList } from '../core/text/sentence.ts';

export const byEarWords = {
  skipTo: {
    arena: 'Skip to the arena',
    panel: 'Skip to the panel',
    left: 'Skip to the left panel',
    right: 'Skip to the right panel',
  },
  ways: 'Skip',
  panes: { left: 'Left panel', right: 'Right panel', panel: 'Panel' },

  // The arena.
  keys: 'Tab: next obstacle. Arrow keys: move it. Full stop: next finding. F6: next part of the page. Help lists all keys.',
  contents: 'What lies in the arena',
  isChosen: 'Chosen. ',
  nothingChosen: (obstacles: string, findings: string | null) =>
    `Nothing is chosen. ${findings === null ? obstacles : `${obstacles}, ${findings}`}.`,
  chosen: (name: string, more: readonly string[]) => `Chosen: ${[name, ...more].join(', ')}.`,
  compared: (shown: string, others: readonly string[]) => `${shown} is compared with ${andList(others)}.`,

  // One obstacle.
  notRidden: 'not in the order',
  gait: (gait: string, lead: string | null) => (lead === null ? gait : `${gait} on the ${lead} lead`),
  pinned: 'pinned',
  heading: (angle: string) => `heading ${angle}`,
  gaps: (lengths: readonly string[]) => {
    const [first] = lengths;
    if (lengths.length === 1) return `gap ${first}`;
    if (lengths.every((each) => each === first)) return `${lengths.length} gaps of ${first}`;
    return `gaps ${andList(lengths)}`;
  },
  markers: (letters: readonly string[]) => `${letters.length === 1 ? 'marker' : 'markers'} ${andList(letters)}`,
  way: (length: string, from: string) => `${length} along the line from ${from}`,
  start: 'the start',
  findings: (count: string, says: readonly string[]) => `${count}: ${says.join(' ')}`,

  // What has changed. Every value with the one before.
  wayGait: (place: number, gait: string, was: string) =>
    `the way to number ${place} is ridden at a ${gait} (was ${was})`,
  lead: (place: number, lead: string, was: string) => `the lead at number ${place} is ${lead} (was ${was})`,
  leadOfBend: 'from the bend',
  passage: (place: number, way: string, was: string) => `number ${place} is ridden: ${way} (was: ${was})`,
  place: (place: number, was: number, name: string) => `${name} is number ${place} (was ${was})`,
  gapsAre: (gaps: string, count: number, length: string, was: string) =>
    count === 1 ? `${gaps} is ${length} (was ${was})` : `${gaps} are ${length} (were ${was})`,
  more: (count: number) => (count === 1 ? 'and 1 more changed' : `and ${count} more changed`),

  // What is found.
  found: (count: string, first: string) => `${count}. First: ${first}`,
  noFindings: 'No findings',
  newFindings: (count: number, first: string, left: string) =>
    count === 1 ? `New finding: ${first} ${left} in all.` : `${count} new findings. First: ${first} ${left} in all.`,
  fewer: (count: number, left: string) =>
    `${count === 1 ? '1 finding is' : `${count} findings are`} gone, ${left} left.`,
} as const;
