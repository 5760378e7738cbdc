/**
 * Finds what the tests need from outside the packages: a Chromium, and poppler's readers of PDF. Installs Debian's when
 * something is missing and we may.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** Chromium without its windows: the same engine, and a third less work for the machine. */
const SHELL = '/usr/bin/chromium-headless-shell';
const PLACES = [
  process.env.POLEWRIGHT_CHROMIUM,
  SHELL,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

function found() {
  const readers = ['pdftoppm', 'pdftotext'].every((tool) => spawnSync(tool, ['-v']).error === undefined);
  return readers ? PLACES.find((place) => place && existsSync(place)) : undefined;
}

/** Installs packages of Debian; false where that did not work. */
function installed(...packages) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  return [['update'], ['install', '-y', '--no-install-recommends', ...packages]].every(
    (args) => spawnSync('apt-get', args, { stdio: 'inherit', env }).status === 0,
  );
}

/** The path of a Chromium, or `{ why }`: a sentence that says how to get one. */
export function chromiumPath() {
  const isRoot = process.getuid?.() === 0;
  const wantsShell = isRoot && process.env.POLEWRIGHT_CHROMIUM === undefined && !existsSync(SHELL);
  if (wantsShell) installed('chromium-headless-shell', 'poppler-utils');
  const there = found() ?? (isRoot && installed('chromium', 'poppler-utils') ? found() : undefined);
  if (there) return there;
  const why =
    'The browser tests need Chromium and the PDF tests pdftoppm. On Debian or Ubuntu: sudo apt-get install chromium poppler-utils. ' +
    'Elsewhere install them as you like and set POLEWRIGHT_CHROMIUM to the path of the browser.';
  return { why };
}
