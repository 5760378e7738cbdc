/**
 * `npm run bench -- NAME [NAME …] [--json]`: runs tests/bench/NAME.bench.ts; every bench when none is named.
 * Prints a table, or with --json one document a bench: { bench, rows }.
 */
import { readdirSync } from 'node:fs';
import type { Row } from './row.ts';

interface Bench {
  rows(): Promise<Row[]>;
}

const HERE = new URL('.', import.meta.url);
const ENDING = '.bench.ts';

function figure(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}

function table(rows: readonly Row[]): string {
  const head = ['case', 'unit', 'ours', 'anchor', 'ratio', 'anchor is'];
  const lines = [
    head,
    ...rows.map((each) => [
      each.case,
      each.unit,
      figure(each.ours),
      figure(each.anchor),
      figure(each.ratio),
      each.anchorName,
    ]),
  ];
  const widths = head.map((_, i) => Math.max(...lines.map((line) => line[i]?.length ?? 0)));
  return lines
    .map((line) =>
      line
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

const known = readdirSync(HERE)
  .filter((name) => name.endsWith(ENDING))
  .map((name) => name.slice(0, -ENDING.length));
const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const unknown = asked.filter((name) => !known.includes(name));
if (unknown.length > 0) {
  console.error(`There is no bench ${unknown.join(', ')}. There are: ${known.join(', ')}.`);
  process.exit(2);
}
const json = process.argv.includes('--json');
for (const name of asked.length > 0 ? asked : known) {
  const bench: Bench = await import(new URL(`${name}${ENDING}`, HERE).href);
  const rows = await bench.rows();
  if (json) console.log(JSON.stringify({ bench: name, rows }));
  else console.log(`${name}\n${table(rows)}\n`);
}
