import { sheetFileName } from '../../core/text/file-name.ts';
import { type BoundChapter, folderPages } from '../folder.ts';
import { classFolder, dayFolder, type PlannedChapter, type PlannedFolder } from '../folder-plan.ts';
import type { TooBig } from '../sheet.ts';
import type { ExportFormat, ExportJob, ExportResources, ExportWatch } from './format.ts';
import { pdfFile } from './pdf-format.ts';

function sheetCount(chapters: readonly PlannedChapter[]): number {
  return chapters.reduce((sum, { content }) => sum + (typeof content === 'function' ? 1 : sheetCount(content)), 0);
}

/** The chapters drawn one after the other; one that is too big is told by its title. */
async function drawnChapters(
  chapters: readonly PlannedChapter[],
  begin: () => Promise<void>,
): Promise<readonly BoundChapter[] | TooBig> {
  const drawn: BoundChapter[] = [];
  for (const { title, content } of chapters) {
    if (typeof content === 'function') {
      await begin();
      const pages = content();
      if (pages.kind === 'too-big') return { ...pages, why: `${title}: ${pages.why}` };
      drawn.push({ title, content: pages });
      continue;
    }
    const below = await drawnChapters(content, begin);
    if ('kind' in below) return below;
    const [first, ...rest] = below;
    if (first !== undefined) drawn.push({ title, content: [first, ...rest] });
  }
  return drawn;
}

/** The folder as one file. Drawing and writing count as a step each. */
async function writtenFolder(
  { cover, chapters }: PlannedFolder,
  { course, id }: { readonly course: ExportJob['course']; readonly id: string },
  { resources, watch }: { readonly resources: ExportResources; readonly watch: ExportWatch },
) {
  const count = sheetCount(chapters) + 1;
  let done = 0;
  const begin = async (): Promise<void> => {
    await watch.step(done, count);
    watch.signal?.throwIfAborted();
    done += 1;
  };
  const drawn = await drawnChapters(chapters, begin);
  if ('kind' in drawn) return drawn;
  const [first, ...rest] = drawn;
  if (first === undefined) throw new Error('writtenFolder: a folder has a chapter');
  await begin();
  const pages = folderPages(cover, [first, ...rest]);
  return [await pdfFile(sheetFileName(course.title, id, 'pdf'), pages, await resources.fonts())];
}

/** The sheets of the class bound as one PDF, with contents, bookmarks and page numbers. */
export const folderFormat: ExportFormat = {
  id: 'folder',
  title: 'Folder of the class (one PDF)',
  ending: 'pdf',
  about: 'sheets',
  binds: 'class',
  write({ course, sheets }, resources, watch) {
    return writtenFolder(classFolder(course, sheets), { course, id: 'folder' }, { resources, watch });
  },
};

/** The same for every class of the day in running order, with the timetable and the change-overs. */
export const dayFolderFormat: ExportFormat = {
  id: 'day-folder',
  title: 'Folder of the day (one PDF)',
  ending: 'pdf',
  about: 'sheets',
  binds: 'day',
  async write({ course, sheets }, resources, watch) {
    const plan = dayFolder(course, sheets);
    if (plan === undefined) {
      return { kind: 'no-day', why: 'The course has no classes of a day. Plan it in the stage Change.' };
    }
    return writtenFolder(plan, { course, id: 'day-folder' }, { resources, watch });
  },
};
