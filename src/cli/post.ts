import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Command } from 'commander';
import { survey } from '../core/survey.ts';
import { sheetFileName } from '../core/text/file-name.ts';
import { type Fonts, pdf } from '../sheets/pdf.ts';
import { PAPERS, type PageOptions } from '../sheets/sheet.ts';
import { SHEETS } from '../sheets/sheets.ts';
import { baseCommand } from './command.ts';
import { courseFrom, systemErrorWords } from './course-file.ts';
import { unknownWord } from './did-you-mean.ts';
import { BadInput, type Io, printJson } from './io.ts';

async function fonts(): Promise<Fonts> {
  const { resolve } = createRequire(import.meta.url);
  const [regular, bold] = await Promise.all(
    ['400Regular/Inter_400Regular.ttf', '700Bold/Inter_700Bold.ttf'].map((file) =>
      readFile(resolve(`@expo-google-fonts/inter/${file}`)),
    ),
  );
  if (regular === undefined || bold === undefined) throw new Error('fonts: two were asked for');
  return { regular, bold };
}

/** Writes the whole file or nothing: beside its place first, then under its name. */
async function writeWholeFile(folder: string, name: string, bytes: Uint8Array): Promise<string> {
  const path = join(folder, name);
  const half = join(folder, `.${name}.${process.pid}.part`);
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    throw new BadInput(`The folder for the sheets cannot be made. ${systemErrorWords(error, folder)}`);
  }
  try {
    await writeFile(half, bytes);
    await rename(half, path);
  } catch (error) {
    await rm(half, { force: true });
    throw new BadInput(`The sheet could not be written. ${systemErrorWords(error, path)}`);
  }
  return path;
}

function pageOptionsFrom(options: { paper: string; scale?: string }): PageOptions {
  const paper = PAPERS.find((each) => each === options.paper.toLowerCase());
  if (paper === undefined) throw new BadInput(`--paper: ${unknownWord('paper', options.paper, PAPERS)}`);
  if (options.scale === undefined) return { paper, orientation: 'fit' };
  const scale = Number(options.scale.replace(/^1:/, ''));
  if (!(scale > 0) || !Number.isFinite(scale)) {
    throw new BadInput(`--scale: "${options.scale}" is not a scale. Write one such as 1:200 or 200.`);
  }
  return { paper, orientation: 'fit', scale };
}

/** `post FILE --out DIR`: a sheet for people, as a PDF. */
export function postCommand(io: Io): Command {
  const ids = SHEETS.map((sheet) => sheet.id);
  return baseCommand('post', 'Write a sheet for people as a PDF.', io)
    .argument('<file>', 'A course file (*.course.json).')
    .requiredOption('--out <folder>', 'Where the file goes; the folder is made when it is not there.')
    .option('--sheet <id>', `Which sheet: ${ids.join(', ')}.`, 'pattern')
    .option('--paper <paper>', 'letter, a4 or legal.', 'letter')
    .option('--scale <scale>', 'A scale such as 1:200; refused with the nearest when it does not fit.')
    .option('--json', 'One JSON document about what was written.')
    .action(
      async (file: string, options: { out: string; sheet: string; paper: string; scale?: string; json?: boolean }) => {
        const sheet = SHEETS.find(({ id }) => id === options.sheet);
        if (sheet === undefined) throw new BadInput(`--sheet: ${unknownWord('sheet', options.sheet, ids)}`);
        const pageOptions = pageOptionsFrom(options);
        const course = await courseFrom(file, io);
        const pages = sheet.draw(survey(course), pageOptions);
        if (pages.kind === 'too-big') throw new BadInput(pages.why);
        for (const substitution of pages.substitutions) io.err(`${substitution}\n`);
        const name = sheetFileName(course.title, sheet.id, 'pdf');
        const path = await writeWholeFile(options.out, name, await pdf(pages, await fonts()));
        if (options.json !== true) return io.out(`${path}\n`);
        printJson(io, {
          course: course.title,
          sheet: sheet.id,
          file: path,
          pages: pages.pages.length,
          scale: pages.drawing?.scale ?? null,
        });
      },
    );
}
