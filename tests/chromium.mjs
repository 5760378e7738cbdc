/**
 * Finds what the tests need from outside the packages: a Chromium, and poppler's readers of PDF. Installs Debian's when
 * something is missing and we may.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const PLACES = [
  process.env.POLEWRIGHT_CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

function found() {
  const readers = ['pdftoppm', 'pdftotext'].every((tool) => spawnSync(tool, ['-v']).error === undefined);
  return readers ? PLACES.find((place) => place && existsSync(place)) : undefined;
}

/** The path of a Chromium, or `{ why }`: a sentence that says how to get one. */
export function chromiumPath() {
  const there = found();
  if (there) return there;
  const why =
    'The browser tests need Chromium and the PDF tests pdftoppm. On Debian or Ubuntu: sudo apt-get install chromium poppler-utils. ' +
    'Elsewhere install them as you like and set POLEWRIGHT_CHROMIUM to the path of the browser.';
  if (process.getuid?.() !== 0) return { why };
  for (const args of [['update'], ['install', '-y', '--no-install-recommends', 'chromium', 'poppler-utils']]) {
    const run = spawnSync('apt-get', args, {
      stdio: 'inherit',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
    if (run.status !== 0) return { why };
  }
  return found() ?? { why };
}
