import type { Command } from 'commander';
import { courseLink } from '../core/files/course-link.ts';
import { qrCode } from '../sheets/qr-code.ts';
import { baseCommand } from './command.ts';
import { courseFrom } from './course-file.ts';
import { type Io, printJson } from './io.ts';
import { linkBaseFrom } from './link-base.ts';

/** `link FILE --base URL`: the shown layout in an address. */
export function linkCommand(io: Io): Command {
  return baseCommand('link', 'An address that opens the shown layout with the ride playing; the course is in it.', io)
    .argument('<file>', 'A course file (*.course.json).')
    .requiredOption('--base <url>', 'Where Polewright is served, like https://trail.example/.')
    .option('--json', 'One JSON document about the link and its code.')
    .action(async (file: string, options: { base: string; json?: boolean }) => {
      const base = linkBaseFrom('--base', options.base);
      const course = await courseFrom(file, io);
      const link = courseLink(course, base);
      if (options.json !== true) return io.out(`${link}\n`);
      const code = qrCode(link);
      printJson(io, {
        course: course.title,
        link,
        signs: link.length,
        // Millimetres on paper with the white round it; null where it would be too fine to read.
        code: code === undefined ? null : { modules: code.rows.length, side: Math.round(code.side * 10) / 10 },
      });
    });
}
