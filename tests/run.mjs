/** `npm test`: lint and types, the modules' tests, then end-to-end tests in a real browser. Stops at the first that fails. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { chromiumPath } from './chromium.mjs';

const steps = [
  ['npx', ['biome', 'ci', '.']],
  ['npx', ['tsc', '-p', 'src/core']],
  ['npx', ['tsc', '-p', '.']],
  ['npx', ['vitest', 'run']],
  ['npx', ['playwright', 'test', '-c', 'tests/e2e']],
];

mkdirSync('out', { recursive: true });
const chromium = chromiumPath();
if (typeof chromium !== 'string') {
  console.error(chromium.why);
  process.exit(1);
}
if (!existsSync('node_modules')) {
  console.error('The packages are missing. Run: npm ci');
  process.exit(1);
}
for (const [command, args] of steps) {
  console.log(`\n> ${args.join(' ')}`);
  const run = spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, POLEWRIGHT_CHROMIUM: chromium } });
  if (run.status !== 0) process.exit(run.status ?? 1);
}
