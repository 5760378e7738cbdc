import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { courseFile, runCli, scratchFolder, smallCourse } from './run-cli.ts';

describe('polewright', () => {
  test('without a verb lists the verbs', async () => {
    const { code, out, err } = await runCli();
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/^What is to be done\? There are: set, ride, check, post[a-z, -]*\.\n$/);
  });

  test('with a verb that does not exist says which was meant', async () => {
    const { code, err } = await runCli('chek', 'file', '--json');
    expect(code).toBe(2);
    expect(err).toMatch(
      /^There is no verb "chek"\. Did you mean check\? There are: set, ride, check, post[a-z, -]*\.\n$/,
    );
  });

  test('shows help and its version on stdout', async () => {
    expect((await runCli('--help')).out).toContain('Usage: polewright');
    const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
    expect(await runCli('--version')).toEqual({ code: 0, out: `${version}\n`, err: '' });
  });
});

describe('a course file that cannot be read', () => {
  const folder = scratchFolder();
  const at = (name: string, content: string | Uint8Array) => {
    const path = join(folder, name);
    writeFileSync(path, content);
    return path;
  };
  mkdirSync(join(folder, 'folder'));
  const whole = readFileSync(courseFile(smallCourse()), 'utf8');
  const files: [string, string, string][] = [
    ['is not there', join(folder, 'none.json'), 'There is no file'],
    ['is a folder', join(folder, 'folder'), 'is a folder, not a file.'],
    ['is empty', at('empty.json', ''), 'The file is empty.'],
    ['is cut off', at('cut.json', whole.slice(0, 400)), 'cut.json: '],
    ['is another format', at('foreign.json', '{"format":"music"}'), 'a course says "polewright-course"'],
    ['is newer', at('newer.json', whole.replace('"version": 1', '"version": 99')), 'version 99'],
    ['is no text', at('photo.json', new Uint8Array([0xff, 0xd8, 0xff, 0xe0])), 'is not text (UTF-8).'],
  ];

  test.each(files)('because it %s, is refused by every verb that reads one', async (_, path, why) => {
    for (const argv of [
      ['ride', path, '--json'],
      ['check', path, '--json'],
      ['post', path, '--out', folder],
    ]) {
      const { code, out, err } = await runCli(...argv);
      expect([code, out]).toEqual([2, '']);
      expect(err).toContain(why);
      expect(err.trimEnd().split('\n').length).toBeLessThanOrEqual(2);
    }
  });
});

describe('from a shell', () => {
  const shell = (...argv: string[]) =>
    spawnSync('npm', ['run', '--silent', 'polewright', '--', ...argv], { encoding: 'utf8' });

  test('prints one JSON document and exits 0', () => {
    const { status, stdout, stderr } = shell('set', 'fan', '--inner-gap', '1 ft', '--json');
    expect([status, stderr]).toEqual([0, '']);
    expect(JSON.parse(stdout).facts.lineRadius).toBeCloseTo(3.0972, 4);
  });

  test('says the reason on stderr and exits 2', () => {
    const { status, stdout, stderr } = shell('ride', 'no-such.course.json');
    expect([status, stdout, stderr]).toEqual([2, '', 'There is no file no-such.course.json.\n']);
  });
});
