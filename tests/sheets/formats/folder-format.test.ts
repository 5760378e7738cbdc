import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { dayFolderFormat, folderFormat } from '../../../src/sheets/formats/folder-format.ts';
import type { ExportFormat, ExportJob, ExportWatch } from '../../../src/sheets/formats/format.ts';
import { pdfFormat } from '../../../src/sheets/formats/pdf-format.ts';
import { pattern } from '../../../src/sheets/pattern.ts';
import { ringCard } from '../../../src/sheets/ring.ts';
import { SEEDS } from '../samples.ts';
import { LETTER, RESOURCES, UNWATCHED } from './resources.ts';

function seed(name: string) {
  const found = SEEDS[name];
  if (found === undefined) throw new Error(`there is no seed ${name}`);
  return found;
}

const sheets = [
  { sheet: pattern, options: LETTER },
  { sheet: ringCard, options: LETTER },
] as const;
const ofClass: ExportJob = { course: seed('larkhollow-novice'), sheets, dpi: 150 };
const ofDay: ExportJob = { course: seed('larkhollow-day'), sheets, dpi: 150 };

async function written(format: ExportFormat, job: ExportJob, watch: ExportWatch = UNWATCHED) {
  const files = await format.write(job, RESOURCES, watch);
  if ('kind' in files) throw new Error(files.why);
  return files;
}

async function pageCount(bytes: Uint8Array): Promise<number> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const { numPages } = document;
  await document.destroy();
  return numPages;
}

test('a PDF for each sheet has as many pages as it says, and the scale of its drawing', async () => {
  const [drawn, listed, ...others] = await written(pdfFormat, ofClass);
  if (drawn === undefined || listed === undefined) throw new Error('two sheets are two files');
  expect(others).toEqual([]);
  expect(drawn).toMatchObject({ name: 'saturday-novice-trail-pattern.pdf', type: 'application/pdf' });
  expect(drawn.scale).toBeGreaterThan(1);
  expect(listed.scale).toBeUndefined();
  for (const { bytes, pages } of [drawn, listed]) expect(await pageCount(bytes)).toBe(pages);
});

describe.each([
  ['class', folderFormat, ofClass, 'saturday-novice-trail-folder.pdf'],
  ['day', dayFolderFormat, ofDay, 'larkhollow-a-day-of-trail-day-folder.pdf'],
] as const)('the folder of a %s', (_, format, job, name) => {
  test('is one file, and tells how far it is before each sheet and before it is written', async () => {
    const steps: [number, number][] = [];
    const [file, ...others] = await written(format, job, { step: (done, of) => void steps.push([done, of]) });
    expect(others).toEqual([]);
    expect(file?.name).toBe(name);
    expect(await pageCount(file?.bytes ?? new Uint8Array())).toBe(file?.pages);
    const of = steps[0]?.[1] ?? 0;
    expect(of).toBeGreaterThan(sheets.length);
    expect(steps).toEqual(Array.from({ length: of }, (_each, i) => [i, of]));
  });

  test('is given up at the next sheet when its signal is aborted', async () => {
    const stop = new AbortController();
    const steps: number[] = [];
    const step = (done: number): void => {
      steps.push(done);
      if (done === 1) stop.abort(new Error('given up'));
    };
    await expect(format.write(job, RESOURCES, { step, signal: stop.signal })).rejects.toThrow('given up');
    expect(steps).toEqual([0, 1]);
  });

  test('is not written where a sheet does not fit, which is told by its title', async () => {
    const tooLarge = { ...LETTER, scale: 20 };
    const refused = await format.write(
      { ...job, sheets: [{ sheet: pattern, options: tooLarge }] },
      RESOURCES,
      UNWATCHED,
    );
    expect(refused).toMatchObject({ kind: 'too-big', why: expect.stringMatching(/^Pattern: At 1:20 the arena is/) });
  });
});

test('the folder of a day says what to do where no day is planned', async () => {
  const refused = await dayFolderFormat.write(ofClass, RESOURCES, UNWATCHED);
  expect(refused).toEqual({ kind: 'no-day', why: expect.stringContaining('no classes of a day') });
});
