import { readFile } from 'node:fs/promises';
import type { Command } from 'commander';
import { pointsText, STATUS_WORDS } from '../core/score/card-table.ts';
import { readCard } from '../core/score/read-card.ts';
import { SCORE_CAUTION, type ScoreCard } from '../core/score/score-card.ts';
import { type CardRow, placings, tally } from '../core/score/tally.ts';
import { andList } from '../core/text/sentence.ts';
import { baseCommand } from './command.ts';
import { systemErrorWords } from './course-file.ts';
import { BadInput, type Io, printJson } from './io.ts';
import { table } from './table.ts';

async function cardFrom(path: string): Promise<ScoreCard> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    throw new BadInput(systemErrorWords(error, path));
  }
  const read = readCard(text);
  if (read.kind === 'refused') throw new BadInput(`${path}: ${read.why}`);
  return read.card;
}

function stateWords({ status, missing, isTied, brokenBy }: CardRow): string {
  const words = [
    status === 'begun' ? `${STATUS_WORDS.begun}, without ${andList(missing.map(String))}` : STATUS_WORDS[status],
    ...(isTied ? ['tied'] : []),
    ...(brokenBy === undefined ? [] : [`tie broken by the ${brokenBy === 'order' ? 'judge' : 'time'}`]),
  ];
  return words.join(', ');
}

function printCard(io: Io, card: ScoreCard): void {
  const { class: about, judge, scoring } = card;
  io.out(
    `${about.title || card.course}${judge === '' ? '' : `, judge ${judge}`}: by ${scoring.book}, from ${scoring.base}\n\n`,
  );
  const rows = placings(tally(card)).map((row) => [
    row.place === undefined ? '' : String(row.place),
    row.entry.number,
    [row.entry.rider, row.entry.horse].filter((each) => each !== '').join(' on '),
    pointsText(row.scores, 'plus'),
    pointsText(-row.penalties),
    row.total === undefined ? '' : pointsText(row.total),
    stateWords(row),
  ]);
  io.out(table(['place', 'number', 'rider', 'scores', 'penalties', 'total', ''], rows));
  for (const { number, name, struck } of card.columns) {
    if (struck !== undefined) io.out(`Counts for nobody: ${number}. ${name} (${struck})\n`);
  }
  io.out(`\n${SCORE_CAUTION}\n`);
}

function cardDocument(card: ScoreCard) {
  return {
    course: card.course,
    class: card.class,
    book: card.scoring.book,
    placings: placings(tally(card)).map(({ entry, ...row }) => ({
      number: entry.number,
      rider: entry.rider,
      horse: entry.horse,
      ...row,
    })),
    caution: SCORE_CAUTION,
  };
}

/** `score CARD`: totals, placings and ties of a score card. */
export function scoreCommand(io: Io): Command {
  return baseCommand('score', 'Totals, placings and ties of a score card: an aid to the scribe.', io)
    .argument('<card>', 'A score card as the app saves it (*-score.json).')
    .option('--json', 'One JSON document; points in halves.')
    .action(async (path: string, options: { json?: boolean }) => {
      const card = await cardFrom(path);
      if (options.json === true) printJson(io, cardDocument(card));
      else printCard(io, card);
    });
}
