import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeFiles } from '../../src/cli/write-files.ts';
import { scratchFolder } from './run-cli.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

test('all files are written, and nothing else is left', async () => {
  const folder = join(scratchFolder(), 'new');
  const files = ['a.pdf', 'b.pdf'].map((name) => ({ name, bytes: bytes(name) }));
  expect(await writeFiles(folder, files, { over: false })).toEqual([join(folder, 'a.pdf'), join(folder, 'b.pdf')]);
  expect(readdirSync(folder)).toEqual(['a.pdf', 'b.pdf']);
  expect(readFileSync(join(folder, 'b.pdf'), 'utf8')).toBe('b.pdf');
});

test('where the last file cannot get to its place, those before it are taken back and what was there is there again', async () => {
  const folder = scratchFolder();
  writeFileSync(join(folder, 'old.pdf'), 'old');
  // No folder of this name is there, so the third file finds no place when the others have theirs.
  const names = ['new.pdf', 'old.pdf', 'missing/third.pdf'];
  const files = names.map((name) => ({ name, bytes: bytes('new') }));
  await expect(writeFiles(folder, files, { over: true })).rejects.toThrow(/^Nothing was written\. /);
  expect(readdirSync(folder)).toEqual(['old.pdf']);
  expect(readFileSync(join(folder, 'old.pdf'), 'utf8')).toBe('old');
});

test('a folder in the place of a file is never replaced', async () => {
  const folder = scratchFolder();
  mkdirSync(join(folder, 'a.pdf'));
  const files = [{ name: 'a.pdf', bytes: bytes('new') }];
  await expect(writeFiles(folder, files, { over: true })).rejects.toThrow(/is a folder, not a file/);
  expect(readdirSync(folder)).toEqual(['a.pdf']);
});
