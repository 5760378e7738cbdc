import { zipSync } from 'fflate';
import type { Course } from '../../core/course/course.ts';
import { fileName } from '../../core/text/file-name.ts';
import type { AskedSheet } from '../../sheets/folder-plan.ts';
import type { ExportedFile, ExportResources, ExportWatch } from '../../sheets/formats/format.ts';
import { EXPORT_FORMATS } from '../../sheets/formats/formats.ts';
import type { PageOptions } from '../../sheets/sheet.ts';
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
  /** Pages in all files; 0 where it is about the course. */
  readonly pages: number;
  /** Denominator, where it is one sheet with a drawing. */
  readonly scale: number | null;
  /** What a person should know of it, each once. */
  readonly notices: readonly string[];
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
  const asked = ({ sheet, options }: OrderedSheet): AskedSheet => ({ sheet: sheetById(sheet), options });
  const [first, ...rest] = order.sheets;
  const job = { course: order.course, sheets: [asked(first), ...rest.map(asked)] as const, dpi: order.dpi };
  const files = await format.write(job, resources, watch);
  if ('kind' in files) return { kind: 'refused', why: files.why };
  const [only] = files;
  if (only === undefined) throw new Error(`exportedOrder: ${order.format} wrote no file`);
  return {
    kind: 'exported',
    file: files.length === 1 ? only : packOf(files, order.course),
    count: files.length,
    pages: files.reduce((sum, { pages = 0 }) => sum + pages, 0),
    scale: files.length === 1 ? (only.scale ?? null) : null,
    notices: [...new Set(files.flatMap(({ notices = [] }) => notices))],
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
