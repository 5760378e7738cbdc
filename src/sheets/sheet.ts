/**
 * sheets/ turns a survey into pages for people, in millimetres on paper, y down from the top-left corner. A sheet is
 * drawn once as marks; pdf, svg and png only paint them.
 */
import type { Mark } from '../core/plane/mark.ts';
import type { Survey } from '../core/survey.ts';

export const PAPERS = ['letter', 'a4', 'legal'] as const;
export type Paper = (typeof PAPERS)[number];

/** As people call them. */
export const PAPER_NAMES: Readonly<Record<Paper, string>> = { letter: 'Letter', a4: 'A4', legal: 'Legal' };

export interface PageOptions {
  readonly paper: Paper;
  readonly orientation: 'portrait' | 'landscape' | 'fit';
  /** Wanted denominator of the scale (200 for 1:200); absent: the largest of the usual scales that fits. */
  readonly scale?: number;
  /** The choices of the sheet's own options, by option; absent: the usual ones. */
  readonly chosen?: Readonly<Record<string, string>>;
  /** Where the app is served: links to a course begin with it. Absent: sheets have no code for a phone. */
  readonly linkBase?: string;
}

/** Something about one sheet that may be chosen. */
export interface SheetOption {
  readonly id: string;
  readonly title: string;
  /** The first is the usual one. */
  readonly choices: readonly [SheetChoice, ...SheetChoice[]];
}

export interface SheetChoice {
  readonly id: string;
  readonly title: string;
}

/** What is chosen of an option: the usual where nothing, or nothing that there is, was asked for. */
export function chosenOf(option: SheetOption, { chosen }: PageOptions): string {
  const asked = chosen?.[option.id];
  return option.choices.find(({ id }) => id === asked)?.id ?? option.choices[0].id;
}

export interface Page {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark<'paper'>[];
  /** One sentence for a screen reader. */
  readonly about: string;
}

/** Where the ground lies on the first page. */
export interface PaperDrawing {
  /** Denominator: what is drawn is exactly so much smaller than the ground. */
  readonly scale: number;
  /**
   * Paper position, mm, of the arena's datum corner. The arena's +x runs right and +y up the page; `turned` a quarter:
   * +x runs up the page and +y to the left.
   */
  readonly origin: PaperOrigin;
  /** Obstacles that are drawn once more on it, each at a scale of its own. */
  readonly insets?: readonly PaperInset[];
}

/** Where the ground's datum corner lies, mm. */
export interface PaperOrigin {
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

/** An obstacle in a frame, as true to its scale as the drawing is to its own. */
export interface PaperInset {
  readonly obstacle: string;
  readonly scale: number;
  readonly origin: PaperOrigin;
  /** The page on which it stands, 0 first; absent: that of the drawing. */
  readonly page?: number;
}

export interface Pages {
  readonly kind: 'pages';
  readonly title: string;
  readonly pages: readonly [Page, ...Page[]];
  /** Absent on a sheet of words alone. */
  readonly drawing?: PaperDrawing;
  /** For the file's own metadata: ISO date or empty, and who posts it or empty. The clock is never read. */
  readonly card: { readonly date: string; readonly author: string };
  /** One sentence about all signs that had to be replaced for want of a glyph; none where every sign is printed. */
  readonly substitutions: readonly string[];
  /** What the pages are divided into, for bookmarks; absent: one sheet. */
  readonly chapters?: readonly Chapter[];
}

/** What bound pages are divided into, by its first page, from 0; the first chapter within another begins on the same page. */
export interface Chapter {
  readonly title: string;
  readonly page: number;
  readonly chapters?: readonly Chapter[];
}

/** The scale that was asked for does not fit: why, and the nearest that does. */
export interface TooBig {
  readonly kind: 'too-big';
  readonly why: string;
  readonly nearest: number;
}

export interface Sheet {
  readonly id: string;
  readonly title: string;
  /** Absent: nothing but the paper. */
  readonly options?: readonly SheetOption[];
  /** It is about the layout, whoever rides it: once in the folder of a day, not for each class. */
  readonly perLayout?: true;
  /** The choices with which it is about a whole day: once in the folder of a day. Absent: it is about one class or layout. */
  readonly wholeDay?: Readonly<Record<string, string>>;
  draw(survey: Survey, ask: PageOptions): Pages | TooBig;
}
