import { runCommandLine } from './run.ts';

/** A reader that has seen enough (`| head`) closes the pipe; that is no error. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

try {
  process.exitCode = await runCommandLine(process.argv.slice(2), {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
  });
} catch (error) {
  console.error('This is a mistake of the program, not of yours:');
  console.error(error);
  process.exitCode = 3;
}
