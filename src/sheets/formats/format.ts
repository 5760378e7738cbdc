/** formats/ writes sheets, or the course itself, as files that other programs read. */
import type { Course } from '../../core/course/course.ts';
import type { AskedSheet } from '../folder-plan.ts';
import type { Fonts } from '../pdf.ts';
import type { TooBig } from '../sheet.ts';

/** A file that is handed out. */
export interface ExportedFile {
  /** With its ending; made by the same rule wherever it is written. */
  readonly name: string;
  /** Media type. */
  readonly type: string;
  readonly bytes: Uint8Array;
  /** How many pages, and the scale of the drawing, where it has them. */
  readonly pages?: number;
  readonly scale?: number;
  /** What a person should know of it: signs that had to be replaced. */
  readonly notices?: readonly string[];
}

/** What is to be written. */
export interface ExportJob {
  readonly course: Course;
  /** In the order in which they are bound. A format of the course itself does not look at them. */
  readonly sheets: readonly [AskedSheet, ...AskedSheet[]];
  /** Dots in an inch, for a picture of dots. */
  readonly dpi: number;
}

/** What writers need beside the program's code, fetched when it is asked for. */
export interface ExportResources {
  fonts(): Promise<Fonts>;
  /** The same letters as WOFF2 files for browsers: small, and without rare signs. */
  faces(): Promise<Pick<Fonts, 'regular' | 'bold'>>;
  /** The program that turns an SVG into dots: the package's WebAssembly file. */
  rasterizer(): Promise<Uint8Array>;
}

/** A picture would have more dots than are safe to draw: why, and the most dots in an inch that are. */
export interface TooManyDots {
  readonly kind: 'too-many-dots';
  readonly why: string;
  readonly nearest: number;
}

/** The folder of a day was asked for, and no day is planned: why, and what to do. */
export interface NoDay {
  readonly kind: 'no-day';
  readonly why: string;
}

/** Why nothing can be written as it was asked for. */
export type ExportRefusal = TooBig | TooManyDots | NoDay;

/** How a long job tells how far it is, and is given up. */
export interface ExportWatch {
  /** Called before each piece of work: so many are done, of so many. The work waits for the answer, so that a page can be painted. */
  step(done: number, of: number): void | Promise<void>;
  /** Aborted: the work stops at the next piece, and rejects with its reason. */
  readonly signal?: AbortSignal;
}

/** A kind of file. */
export interface ExportFormat {
  readonly id: string;
  readonly title: string;
  /** Without the dot. */
  readonly ending: string;
  /** Whether it writes pages of sheets, or what lies on the ground. */
  readonly about: 'sheets' | 'course';
  /** Binds all sheets into one file: of the class as it is, or of every class of the day. Absent: a file for each sheet or page. */
  readonly binds?: 'class' | 'day';
  /**
   * Every file or none: where one sheet cannot be drawn, it is told by its title and nothing is written, because a scale is a
   * promise. Rejects when a resource cannot be had, and when the watch's signal is aborted.
   */
  write(
    job: ExportJob,
    resources: ExportResources,
    watch: ExportWatch,
  ): Promise<readonly ExportedFile[] | ExportRefusal>;
}
