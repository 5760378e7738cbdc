import { Command, type CommanderError } from 'commander';
import { didYouMean } from './did-you-mean.ts';
import { BadInput, type Io } from './io.ts';

/** The usage error in words of our own, in place of the parser's. */
function usageError(command: Command, error: CommanderError): string {
  const quoted = /'([^']+)'/.exec(error.message)?.[1] ?? '';
  const flags = command.options.map((option) => option.long ?? option.flags);
  switch (error.code) {
    case 'commander.unknownOption':
      return `${command.name()} has no ${quoted}.${didYouMean(quoted, flags)} It takes: ${flags.join(', ')}.`;
    case 'commander.optionMissingArgument':
      return `${quoted} wants a value after it.`;
    case 'commander.missingArgument': {
      const wanted = command.registeredArguments.map((argument) => argument.name().toUpperCase()).join(' ');
      return `${command.name()} wants: ${wanted}. See polewright ${command.name()} --help.`;
    }
    case 'commander.missingMandatoryOptionValue':
      return `${command.name()} wants ${quoted}.`;
    case 'commander.excessArguments': {
      const given = command.args.slice(command.registeredArguments.length).join(' ');
      return `${command.name()} does not know what to do with "${given}".`;
    }
    default:
      return error.message.replace(/^error: /, '');
  }
}

/** Help and the version were shown; nothing else is to do. */
export class HelpShown extends Error {}

/** A command that writes to `io` only and throws instead of ending the process. */
export function baseCommand(name: string, about: string, io: Io): Command {
  const command = new Command(name);
  command
    .description(about)
    .helpCommand(false)
    .allowExcessArguments(false)
    .configureHelp({ sortOptions: false })
    .configureOutput({ writeOut: (text) => io.out(text), writeErr: () => {}, outputError: () => {} })
    .exitOverride((error) => {
      if (error.exitCode === 0) throw new HelpShown();
      throw new BadInput(usageError(command, error));
    });
  return command;
}
