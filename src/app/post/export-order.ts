import { zipSync } from 'fflate';
import type { Course } from '../../core/course/course.ts';
import { fileName } from '../../core/text/file-name.ts';
import type { AskedSheet, ExportedFile, ExportResources, ExportWatch } from '../../sheets/formats/format.ts';
import { EXPORT_FORMATS } from '../../sheets/formats/formats.ts';
import type { PageOptions, Pages, Sheet } from '../../sheets/sheet.ts';
import { sheetById } from '../../sheets/sheets.ts';

/** What is to be exported, as plain data. The course is the one of the moment at which it was asked for. */
export interface ExportOrder {
  readonly course: Course;
  /** By id. */
  readonly format: string;
  readonly sheets: readonly [OrderedSheet, ...OrderedSheet[]];
  /** Dots in an inch. */
  readonly dpi: number;
}

export interface OrderedSheet {
  /** By id. */
  readonly sheet: string;
  readonly options: PageOptions;
}

/** One file for the person. Several are packed into one: browsers ask before a page hands out more than one. */
export interface ExportedOrder {
  readonly kind: 'exported';
  readonly file: ExportedFile;
  /** How many files are in it where it is a pack; 1 where it is none. */
  readonly count: number;
  /** Pages that were drawn; 0 where it is about the course. */
  readonly pages: number;
  /** Denominator, where one sheet with a drawing was drawn. */
  readonly scale: number | null;
}

/** Nothing was written, and why: a scale that does not fit, or whatever else a format refuses. */
export interface RefusedOrder {
  readonly kind: 'refused';
  readonly why: string;
}

/** The time in a pack of files: the clock is not read, so that equal files are equal packs. */
const PACK_TIME = new Date(2000, 0, 1);

/** Writes what was ordered. Throws for a format that there is not; rejects when a resource cannot be had. */
export async function exportedOrder(
  order: ExportOrder,
  resources: ExportResources,
  watch: ExportWatch,
): Promise<ExportedOrder | RefusedOrder> {
  const format = EXPORT_FORMATS.find(({ id }) => id === order.format);
  if (format === undefined) throw new Error(`exportedOrder: there is no format ${order.format}`);
  const drawn: Pages[] = [];
  const noted = ({ sheet, options }: OrderedSheet): AskedSheet => ({
    sheet: notingSheet(sheetById(sheet), drawn),
    options,
  });
  const [first, ...rest] = order.sheets;
  const job = { course: order.course, sheets: [noted(first), ...rest.map(noted)] as const, dpi: order.dpi };
  const files = await format.write(job, resources, watch);
  if ('kind' in files) return { kind: 'refused', why: files.why };
  const [only] = files;
  if (only === undefined) throw new Error(`exportedOrder: ${order.format} wrote no file`);
  return {
    kind: 'exported',
    file: files.length === 1 ? only : packOf(files, order.course),
    count: files.length,
    pages: drawn.reduce((sum, { pages }) => sum + pages.length, 0),
    scale: drawn.length === 1 ? (drawn[0]?.drawing?.scale ?? null) : null,
  };
}

/** A sheet that notes what it drew. */
function notingSheet(sheet: Sheet, drawn: Pages[]): Sheet {
  return {
    ...sheet,
    draw(survey, ask) {
      const pages = sheet.draw(survey, ask);
      if (pages.kind === 'pages') drawn.push(pages);
      return pages;
    },
  };
}

function packOf(files: readonly ExportedFile[], { title }: Course): ExportedFile {
  const entries = files.map(({ name, bytes }) => [name, bytes] as const);
  return {
    name: `${fileName(title)}-sheets.zip`,
    type: 'application/zip',
    bytes: zipSync(Object.fromEntries(entries), { mtime: PACK_TIME }),
  };
}
