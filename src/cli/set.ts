import type { Command } from 'commander';
import { obstacleAlone } from '../core/checks/results/obstacle-alone.ts';
import { RULEBOOKS, rulebookById } from '../core/checks/rulebooks/rulebooks.ts';
import type { LengthUnit } from '../core/measure/quantity.ts';
import { readTyped } from '../core/measure/typed.ts';
import { buildKind, usualValues } from '../core/obstacles/build.ts';
import type { Built, Infeasible, ObstacleKind } from '../core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../core/obstacles/obstacles.ts';
import { lengthWords } from '../core/obstacles/refusal-words.ts';
import type { Param, Value, Values } from '../core/pieces/params.ts';
import { findingDocument } from './check-compare.ts';
import { baseCommand } from './command.ts';
import { unknownWord } from './did-you-mean.ts';
import { BadInput, type Io, printJson } from './io.ts';
import { table } from './table.ts';
import { countWords, FAIL_ON_HELP, failsOn, printFinding, readBookId, readFailOn } from './verdict.ts';

/** `innerGap` as the command line spells it. */
export function hyphenated(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

/** The value that a person typed for a parameter. Throws BadInput when it cannot be read. */
function readValue(
  param: Param,
  flag: string,
  typed: { readonly text: string; readonly unit: LengthUnit; readonly io: Io },
): Value {
  if (param.kind === 'choice') {
    const known = Object.keys(param.options);
    const id = typed.text.trim().toLowerCase();
    if (known.includes(id)) return id;
    throw new BadInput(`${flag}: ${unknownWord('choice', typed.text, known)}`);
  }
  const reading = readTyped(param.kind, typed.text, typed.unit);
  if (reading.kind === 'refused') throw new BadInput(`${flag}: ${reading.why}`);
  if (reading.note !== undefined) typed.io.err(`${flag}: ${reading.note}\n`);
  return reading.value;
}

function valueText(param: Param, value: Value): string {
  if (typeof value !== 'number') return value;
  if (param.kind === 'length') return lengthWords(value);
  if (param.kind === 'angle') return `${Number(((value * 180) / Math.PI).toFixed(1))}°`;
  return String(Number(value.toFixed(4)));
}

function optionHelp(param: Param): string {
  const says = param.says === undefined ? '' : ` ${param.says}`;
  if (param.kind === 'choice')
    return `${param.label}.${says} One of ${Object.keys(param.options).join(', ')}. Usual: ${param.usual}.`;
  const bounds = `${valueText(param, param.least)} to ${valueText(param, param.most)}`;
  return `${param.label}.${says} Usual: ${valueText(param, param.usual)}; ${bounds}.`;
}

function factText(key: string, value: number): string {
  return key === 'angle' ? `${Number(((value * 180) / Math.PI).toFixed(2))}°` : lengthWords(value);
}

function printBuilt(io: Io, kind: ObstacleKind, values: Values, result: Built): void {
  const params = Object.entries(kind.params).map(([key, param]) => [
    `--${hyphenated(key)}`,
    valueText(param, values[key] ?? param.usual),
  ]);
  const facts = Object.entries(result.facts).map(([key, value]) => [key, factText(key, value)]);
  const pieces = result.pieces.map(({ id, kind, pose }) => [
    id,
    kind,
    pose.x.toFixed(3),
    pose.y.toFixed(3),
    `${((pose.angle * 180) / Math.PI).toFixed(1)}°`,
  ]);
  const ways = result.passages.map(({ id, title, gaits }) => [id, title, gaits.join(', ')]);
  io.out(`${kind.title}\n\n`);
  io.out(table(['parameter', 'value'], params));
  if (facts.length > 0) io.out(`\n${table(['fact', 'value'], facts)}`);
  io.out(`\n${table(['piece', 'kind', 'x m', 'y m', 'turned'], pieces)}`);
  if (ways.length > 0) io.out(`\n${table(['way', 'ridden', 'gaits'], ways)}`);
}

function printInfeasible(io: Io, asJson: boolean, attempt: { kind: string; params: Values; result: Infeasible }): void {
  const { why, nearest, facts } = attempt.result;
  if (asJson) {
    printJson(io, { kind: attempt.kind, params: attempt.params, refused: { why, nearest: nearest ?? null }, facts });
  }
}

function build(
  kind: ObstacleKind,
  options: Readonly<Record<string, unknown>>,
  { io, reportFailure }: { readonly io: Io; readonly reportFailure: (fails: boolean) => void },
): void {
  const unit = unitFrom(options.unit);
  const given = Object.fromEntries(
    Object.entries(kind.params).flatMap(([key, param]) => {
      const text = options[key];
      return typeof text === 'string' ? [[key, readValue(param, `--${hyphenated(key)}`, { text, unit, io })]] : [];
    }),
  );
  const params = usualValues(kind, given);
  const result = buildKind(kind, given);
  const asJson = options.json === true;
  if (result.kind === 'infeasible') {
    printInfeasible(io, asJson, { kind: kind.id, params, result });
    throw new BadInput(result.why);
  }
  const rulebook = { id: readBookId(String(options.rulebook)), house: {} };
  const alone = obstacleAlone(kind.id, given, { rulebook, unit });
  const findings = alone.kind === 'judged' ? alone.findings : [];
  reportFailure(failsOn(findings, readFailOn(String(options.failOn))));
  if (asJson) {
    const { pieces, facts } = result;
    printJson(io, {
      kind: kind.id,
      params,
      pieces,
      facts,
      rulebook: rulebook.id,
      findings: findings.map(findingDocument),
    });
    return;
  }
  printBuilt(io, kind, params, result);
  io.out(`\nBy itself, by ${rulebookById(rulebook.id)?.title}: ${countWords(findings)}\n`);
  for (const finding of findings) printFinding(io, finding);
}

function unitFrom(text: unknown): LengthUnit {
  if (text === 'ft' || text === 'm') return text;
  throw new BadInput(`--unit: ${unknownWord('unit', String(text), ['ft', 'm'])}`);
}

/**
 * `set KIND`: builds one obstacle from its parameters and judges it by itself; each kind is a command of its own, with
 * its own help. `reportFailure` is told whether the run fails.
 */
export function setCommand(io: Io, reportFailure: (fails: boolean) => void): Command {
  const command = baseCommand('set', 'Build one obstacle from what a designer thinks in.', io);
  const known = OBSTACLE_KINDS.map((kind) => kind.id);
  command
    .argument('[kind]')
    .usage('KIND [--parameter value …] [--rulebook ID] [--fail-on WEIGHT] [--json]')
    .action((kind?: string) => {
      if (kind === undefined) throw new BadInput(`Which obstacle? There are: ${known.join(', ')}.`);
      throw new BadInput(unknownWord('obstacle', kind, known));
    })
    // So that an unknown kind is reported before its parameters are read.
    .allowUnknownOption()
    .allowExcessArguments();
  for (const kind of OBSTACLE_KINDS) {
    const each = baseCommand(kind.id, kind.about, io);
    for (const [key, param] of Object.entries(kind.params)) {
      each.option(`--${hyphenated(key)} <${param.kind}>`, optionHelp(param));
    }
    each
      .option('--unit <unit>', 'What a bare number means: ft or m.', 'ft')
      .option(
        '--rulebook <id>',
        `The rule book that judges it: ${RULEBOOKS.map((book) => book.id).join(', ')}.`,
        RULEBOOKS[0]?.id,
      )
      .option('--fail-on <weight>', FAIL_ON_HELP, 'must')
      .option('--json', 'One JSON document in SI units.')
      .action((options: Record<string, unknown>) => build(kind, options, { io, reportFailure }));
    command.addCommand(each);
  }
  return command;
}
