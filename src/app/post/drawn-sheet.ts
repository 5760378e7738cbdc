import type { Course } from '../../core/course/course.ts';
import { survey } from '../../core/survey.ts';
import type { PageOptions, TooBig } from '../../sheets/sheet.ts';
import { sheetById } from '../../sheets/sheets.ts';
import { svg } from '../../sheets/svg.ts';

/** A sheet of a course as it is to be shown. Plain data. */
export interface SheetQuestion {
  readonly course: Course;
  /** By id. */
  readonly sheet: string;
  readonly options: PageOptions;
}

/** A page as a picture. */
export interface PagePicture {
  /** An SVG document in two parts: between them the rules of its letters go in. */
  readonly svg: readonly [string, string];
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  /** One sentence for a screen reader. */
  readonly about: string;
}

/** A sheet that was drawn. */
export interface DrawnSheet {
  readonly kind: 'drawn';
  readonly pages: readonly [PagePicture, ...PagePicture[]];
  /** Denominator; null on a sheet of words alone. */
  readonly scale: number | null;
  readonly substitutions: readonly string[];
}

/** Stands where the rules go in; in no page, because words are escaped. */
const FACES_PLACE = '<!>';

/** The pages of a sheet as pictures, or why there are none. */
export function drawnSheet({ course, sheet, options }: SheetQuestion): DrawnSheet | TooBig {
  const drawn = sheetById(sheet).draw(survey(course), options);
  if (drawn.kind === 'too-big') return drawn;
  const [first, ...rest] = drawn.pages.map((page): PagePicture => {
    const [before = '', after = ''] = svg(page, FACES_PLACE).split(`<style>${FACES_PLACE}</style>`);
    return { svg: [before, after], width: page.width, height: page.height, about: page.about };
  });
  if (first === undefined) throw new Error(`drawnSheet: ${sheet} has no page`);
  const scale = drawn.drawing?.scale ?? null;
  return { kind: 'drawn', pages: [first, ...rest], scale, substitutions: drawn.substitutions };
}

/** An answer, or why there is none. */
export type DrawingTold = { readonly drawn: DrawnSheet | TooBig } | { readonly failure: string };

/** The same, for whoever cannot catch what is thrown. */
export function drawingTold(question: SheetQuestion): DrawingTold {
  try {
    return { drawn: drawnSheet(question) };
  } catch (failure) {
    return { failure: failure instanceof Error ? failure.message : String(failure) };
  }
}

/** The picture as a file; `faces` are the @font-face rules of its letters. */
export function pictureFile({ svg: [before, after] }: PagePicture, faces: string): Blob {
  return new Blob([before, faces === '' ? '' : `<style>${faces}</style>`, after], { type: 'image/svg+xml' });
}
