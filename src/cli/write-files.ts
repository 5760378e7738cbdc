/** Writes several files into a folder, all of them or none. */
import { lstat, mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { systemErrorWords } from './course-file.ts';
import { BadInput } from './io.ts';

/** A file by its name in the folder. */
interface NewFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A file on its way: written beside its place first. What was there before is kept until all are in their places. */
interface Placing {
  readonly path: string;
  readonly half: string;
  readonly old: string;
  readonly bytes: Uint8Array;
  readonly replaces: boolean;
}

/** Whether there is a file; throws where something else is in its place. */
async function isThere(path: string): Promise<boolean> {
  try {
    const found = await lstat(path);
    if (found.isDirectory()) throw new BadInput(`${path} is a folder, not a file. Nothing was written.`);
    return true;
  } catch (error) {
    if (error instanceof BadInput) throw error;
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return false;
    throw new BadInput(`Nothing was written. ${systemErrorWords(error, path)}`);
  }
}

function alreadyThere(paths: readonly string[]): string {
  const what = paths.length === 1 ? `${paths[0]} is there already` : `These are there already: ${paths.join(', ')}`;
  return `${what}. Nothing was written. Name another folder with --out, or write over with --force.`;
}

async function place({ path, half, old, replaces }: Placing): Promise<void> {
  if (replaces) await rename(path, old);
  await rename(half, path);
}

/** Takes back what was placed, the last first. */
async function takeBack(placed: readonly Placing[]): Promise<void> {
  for (const { path, old, replaces } of placed.toReversed()) {
    // What was there goes back over the new file; where it could not even be moved away, it is still in its place.
    if (replaces) await rename(old, path).catch(() => {});
    else await rm(path, { force: true });
  }
}

/**
 * Writes all files into the folder, which is made where it is not there; answers with their paths. Where one is there
 * already, nothing is written unless it is to be written over. Throws BadInput with the reason, and leaves all as it was.
 */
export async function writeFiles(
  folder: string,
  files: readonly NewFile[],
  { over }: { readonly over: boolean },
): Promise<readonly string[]> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    throw new BadInput(`The folder for the sheets cannot be made. ${systemErrorWords(error, folder)}`);
  }
  const placings: readonly Placing[] = await Promise.all(
    files.map(async ({ name, bytes }, i) => {
      const path = join(folder, name);
      const beside = join(folder, `.polewright-${process.pid}-${i + 1}`);
      return { path, half: `${beside}.part`, old: `${beside}.old`, bytes, replaces: await isThere(path) };
    }),
  );
  const existing = placings.filter(({ replaces }) => replaces).map(({ path }) => path);
  if (existing.length > 0 && !over) throw new BadInput(alreadyThere(existing));
  const placed: Placing[] = [];
  let at = folder;
  try {
    for (const { path, half, bytes } of placings) {
      at = path;
      await writeFile(half, bytes);
    }
    for (const placing of placings) {
      at = placing.path;
      placed.push(placing);
      await place(placing);
    }
  } catch (error) {
    await takeBack(placed);
    await Promise.all(placings.map(({ half }) => rm(half, { force: true })));
    throw new BadInput(`Nothing was written. ${systemErrorWords(error, at)}`);
  }
  await Promise.all(placings.map(({ old }) => rm(old, { force: true })));
  return placings.map(({ path }) => path);
}
