import { csvFormat } from './csv-format.ts';
import { dxfFormat } from './dxf-format.ts';
import { dayFolderFormat, folderFormat } from './folder-format.ts';
import type { ExportFormat } from './format.ts';
import { messageFormat } from './message-format.ts';
import { pdfFormat } from './pdf-format.ts';
import { pngFormat } from './png-format.ts';
import { svgFormat } from './svg-format.ts';

/** Every kind of file, in the order in which they are offered. */
export const EXPORT_FORMATS: readonly ExportFormat[] = [
  pdfFormat,
  folderFormat,
  dayFolderFormat,
  svgFormat,
  pngFormat,
  messageFormat,
  dxfFormat,
  csvFormat,
];
