import type { Command } from 'commander';
import { printDuration } from '../core/measure/duration.ts';
import { printLength } from '../core/measure/length.ts';
import { obstacleKind } from '../core/obstacles/obstacles.ts';
import { type Survey, survey } from '../core/survey.ts';
import { courseFrom } from './course-file.ts';
import { type Io, printJson } from './io.ts';
import { table } from './table.ts';
import { verb } from './verb.ts';

interface LegTold {
  readonly number: number;
  readonly leg: string;
  readonly obstacle: string;
  readonly title: string;
  readonly passage: string;
  readonly way: string;
  readonly approach: string;
  readonly gait: string;
  readonly lead: string | null;
  readonly length: number;
  readonly seconds: number;
}

function legsTold({ layout, line }: Survey): LegTold[] {
  return layout.ride.legs.map((leg, i) => {
    const obstacle = layout.obstacles.find(({ id }) => id === leg.obstacle);
    const passage = obstacle?.passages.find(({ id }) => id === leg.passage);
    return {
      number: i + 1,
      leg: leg.id,
      obstacle: leg.obstacle,
      title: obstacle?.name ?? obstacleKind(obstacle?.kind ?? '')?.title ?? leg.obstacle,
      passage: leg.passage,
      way: passage?.title ?? '',
      approach: leg.approach,
      gait: leg.gait,
      lead: leg.lead ?? null,
      length: line.elements.filter((element) => element.leg === i).reduce((sum, { length }) => sum + length, 0),
      seconds: line.clock.legs[i] ?? 0,
    };
  });
}

function printPlain(io: Io, surveyed: Survey): void {
  const { course, line } = surveyed;
  const length = (metres: number) => printLength(metres, course.unit);
  io.out(`${course.title}: ${length(line.length)}, ${printDuration(line.clock.go)}\n\n`);
  io.out(
    table(
      ['no', 'obstacle', 'way', 'come to at', 'gait', 'line', 'time'],
      legsTold(surveyed).map((leg) => [
        String(leg.number),
        leg.title,
        leg.way,
        leg.approach,
        leg.lead === null ? leg.gait : `${leg.gait}, ${leg.lead} lead`,
        length(leg.length),
        printDuration(leg.seconds),
      ]),
    ),
  );
  const gaps = line.gaps.map(({ leg, keys, gait, taped, ridden, landings }) => [
    String(leg + 1),
    keys.join(' to '),
    gait,
    length(taped),
    length(ridden),
    String(landings.count),
    length(landings.each),
    landings.fits ? 'fits' : `does not fit; ${landings.nearest.map(length).join(' or ')} would`,
  ]);
  if (gaps.length > 0) {
    io.out(`\n${table(['no', 'gap', 'gait', 'taped', 'ridden', 'landings', 'each', ''], gaps)}`);
  }
  for (const { leg, why } of line.breaks) io.out(`\nNo line to or over number ${leg + 1}: ${why}\n`);
}

/** `ride FILE`: the line of travel with its gaps, landings and times. */
export function rideVerb(io: Io): Command {
  return verb('ride', 'The line of travel of a course: legs, gaps, landings, times.', io)
    .argument('<file>', 'A course file (*.course.json).')
    .option('--json', 'One JSON document in SI units.')
    .action(async (file: string, options: { json?: boolean }) => {
      const surveyed = survey(await courseFrom(file, io));
      const { course, layout, line } = surveyed;
      if (options.json !== true) return printPlain(io, surveyed);
      printJson(io, {
        course: course.title,
        layout: layout.id,
        length: line.length,
        seconds: line.clock.go,
        legs: legsTold(surveyed),
        elements: line.elements,
        crossings: line.crossings,
        gaps: line.gaps,
        breaks: line.breaks,
      });
    });
}
