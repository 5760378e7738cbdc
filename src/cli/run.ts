import { createRequire } from 'node:module';
import { asBuiltCommand } from './asbuilt.ts';
import { changeCommand } from './change.ts';
import { checkCommand } from './check.ts';
import { baseCommand, HelpShown } from './command.ts';
import { dayCommand } from './day.ts';
import { unknownWord } from './did-you-mean.ts';
import { goCommand } from './go.ts';
import { BadInput, type Io } from './io.ts';
import { linkCommand } from './link.ts';
import { postCommand } from './post.ts';
import { rideCommand } from './ride.ts';
import { scoreCommand } from './score.ts';
import { setCommand } from './set.ts';
import { setOutCommand } from './setout.ts';

function version(): string {
  const { version } = createRequire(import.meta.url)('../../package.json') as { version: string };
  return version;
}

/** Runs one command line (without node and the script) and answers with its exit code. Writes to `io` only. */
export async function runCommandLine(argv: readonly string[], io: Io): Promise<number> {
  let fails = false;
  const reportFailure = (found: boolean): void => {
    fails = found;
  };
  const commands = [
    setCommand(io, reportFailure),
    rideCommand(io),
    checkCommand(io, reportFailure),
    postCommand(io),
    linkCommand(io),
    setOutCommand(io),
    changeCommand(io),
    dayCommand(io),
    goCommand(io),
    asBuiltCommand(io, reportFailure),
    scoreCommand(io),
  ];
  const known = commands.map((each) => each.name());
  const program = baseCommand(
    'polewright',
    'Trail courses that ride: set, ride, check, post and change them, set them out by tape, and plan the day.',
    io,
  )
    .version(version())
    .argument('[verb]')
    .allowUnknownOption()
    .allowExcessArguments()
    .action((given?: string) => {
      if (given === undefined) throw new BadInput(`What is to be done? There are: ${known.join(', ')}.`);
      throw new BadInput(unknownWord('verb', given, known));
    });
  for (const each of commands) program.addCommand(each);
  try {
    await program.parseAsync(argv, { from: 'user' });
    return fails ? 1 : 0;
  } catch (error) {
    if (error instanceof HelpShown) return 0;
    if (!(error instanceof BadInput)) throw error;
    io.err(`${error.message}\n`);
    return 2;
  }
}
