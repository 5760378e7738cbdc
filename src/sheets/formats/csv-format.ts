import { csvFormatRows } from 'd3-dsv';
import { survey } from '../../core/survey.ts';
import { sheetFileName } from '../../core/text/file-name.ts';
import { safeCell } from '../../core/text/safe-cell.ts';
import type { ExportFormat } from './format.ts';
import { pieceTable } from './piece-table.ts';

/** Without it a spreadsheet takes the text for one of its own country's. */
const BYTE_ORDER_MARK = '\uFEFF';

/** The pieces of the shown layout as a table for spreadsheets: UTF-8, commas, lines as RFC 4180 has them, a point in numbers. */
export const csvFormat: ExportFormat = {
  id: 'csv',
  title: 'Table of pieces',
  ending: 'csv',
  about: 'course',
  async write({ course }, _resources, { step, signal }) {
    await step(0, 1);
    signal?.throwIfAborted();
    const { heads, rows } = pieceTable(survey(course));
    // A row at a time: the writer ends lines otherwise.
    const lines = [heads, ...rows].map((row) => csvFormatRows([row.map(safeCell)]));
    const text = `${BYTE_ORDER_MARK}${lines.join('\r\n')}\r\n`;
    const name = sheetFileName(course.title, 'pieces', 'csv');
    return [{ name, type: 'text/csv', bytes: new TextEncoder().encode(text) }];
  },
};
