import { survey } from '../../core/survey.ts';
import { sheetFileName } from '../../core/text/file-name.ts';
import type { ExportFormat } from './format.ts';
import { messagePage } from './message-page.ts';
import { painter } from './picture.ts';

/** Dots across: sharp on a phone that shows four of them for each of its own points. */
const DOTS = 1600;

/** A picture of the course to send to somebody's phone. */
export const messageFormat: ExportFormat = {
  id: 'message',
  title: 'Picture for a message',
  ending: 'png',
  about: 'course',
  async write({ course }, resources, { step, signal }) {
    await step(0, 2);
    signal?.throwIfAborted();
    const page = messagePage(survey(course));
    const { png } = await painter(resources);
    await step(1, 2);
    signal?.throwIfAborted();
    const bytes = png(page, (DOTS / page.width) * 25.4);
    return [{ name: sheetFileName(course.title, 'message', 'png'), type: 'image/png', bytes }];
  },
};
