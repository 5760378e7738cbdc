/** What a rule book prints about scoring, as data. Points are multiples of a half. */

/** Who says so, where and when; `common practice, no source` where nobody does. Grades as those of a limit. */
interface Cited {
  readonly source: string;
  readonly url?: string;
  readonly grade: 'A' | 'B' | 'C' | 'D' | 'E';
  /** What the source leaves open, or what another source says. */
  readonly note?: string;
}

/** Where every go begins. */
interface Base extends Cited {
  readonly points: number;
  /** No total is lower; absent: the book does not say. */
  readonly least?: number;
}

/** What an obstacle may be scored, in halves from `least` to `most`. */
interface ObstacleScale extends Cited {
  readonly least: number;
  readonly most: number;
  /** By the points as text: "-1.5" is "extremely poor". */
  readonly words: Readonly<Record<string, string>>;
}

/** A fault and the points that it costs, each time. */
interface Penalty extends Cited {
  readonly id: string;
  readonly points: number;
  readonly fault: string;
  /** The go may not be placed above one without such a fault. */
  readonly below?: true;
}

/** A fault that ends what the go can win: its total is zero, or it has none. */
interface Ruling extends Cited {
  readonly id: string;
  readonly effect: 'zero-score' | 'disqualified';
  readonly fault: string;
}

/** All that a book says of scoring; what is absent it does not say, or it was not seen. */
export interface Scoring {
  /** What of it was seen. */
  readonly about: string;
  /** The id of the book whose base, scale, penalties and rulings are offered where the book in force has none. */
  readonly borrows?: string;
  readonly base?: Base;
  readonly scale?: ObstacleScale;
  readonly penalties?: readonly Penalty[];
  readonly rulings?: readonly Ruling[];
  /** An obstacle may be left without a score, and the go is whole all the same: for this fault. */
  readonly unscored?: Cited & { readonly fault: string };
  /** An obstacle may be struck for everyone. */
  readonly struck?: Cited & { readonly says: string };
  /** Where goes with a zero score stand. */
  readonly zero?: Cited & { readonly placed: 'last' | 'unplaced' };
  /** What breaks a tie, and in which classes only; absent: the judge decides. */
  readonly tie?: Cited & { readonly by: 'time'; readonly only: string; readonly then: string };
}
