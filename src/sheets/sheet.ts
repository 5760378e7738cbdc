/**
 * sheets/ turns a survey into pages for people, in millimetres on paper, y down from the top-left corner. A sheet is
 * drawn once as marks; pdf, svg and png only paint them.
 */
import type { Mark } from '../core/plane/mark.ts';
import type { Survey } from '../core/survey.ts';

export type Paper = 'letter' | 'a4';

export interface PageOptions {
  readonly paper: Paper;
  readonly orientation: 'portrait' | 'landscape' | 'fit';
  /** Wanted denominator of the scale (200 for 1:200); absent: the largest of the usual scales that fits. */
  readonly scale?: number;
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
  readonly origin: { readonly x: number; readonly y: number; readonly turned: boolean };
}

export interface Pages {
  readonly kind: 'pages';
  readonly title: string;
  readonly pages: readonly [Page, ...Page[]];
  /** Absent on a sheet of words alone. */
  readonly drawing?: PaperDrawing;
  /** For the file's own metadata: ISO date or empty, and who posts it or empty. The clock is never read. */
  readonly card: { readonly date: string; readonly author: string };
  /** One sentence for each sign that had to be replaced for want of a glyph. */
  readonly substitutions: readonly string[];
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
  draw(survey: Survey, ask: PageOptions): Pages | TooBig;
}
