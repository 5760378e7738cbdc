import type { Station } from './passage.ts';

/**
 * What the words of a pattern call an obstacle. What the horse does there, on which hand and with which feet, comes from
 * the stations: a kind says only its nouns, and the phrase that the trade has of its own. In a phrase `{}` stands for the
 * noun with its article, or for its pronoun where it was named before: "over {}".
 */
export interface Wording {
  /** Without article: "fan", "boxes". Absent: what its pieces are called. */
  readonly noun?: string;
  /** How it is ridden forwards; absent: "over {}". */
  readonly ridden?: string;
  /** How it is side passed; absent: "over {}". */
  readonly sidePassed?: string;
  /** The horse goes into it and comes out of it. */
  readonly isEntered?: true;
  /** It has two ends, and its poles leave one way to turn at each corner between them: those turns are not said. */
  readonly isLane?: true;
  /**
   * The part on which a move lies, as a noun phrase: "its stem"; absent where it is all of it. The stations are those of
   * the move, with the one before it. Hands are those of what the kind builds; in a mirror image they are exchanged.
   */
  part?(stations: readonly Station[]): string | undefined;
  /** What the rider does by hand with it on that hand; a `pull` backs the horse first. Absent: "work {} on the left". */
  work?(hand: 'left' | 'right', how: 'push' | 'pull'): string;
}

/** Left is right in a mirror. */
export function swappedHands(text: string): string {
  return text.replace(/\b(left|right)\b/g, (hand) => (hand === 'left' ? 'right' : 'left'));
}
