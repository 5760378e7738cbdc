import { feet, type LengthUnit } from '../measure/quantity.ts';
import { type Arena, type ClassEntry, type Course, FORMAT, type RuleChoice, type Stock, VERSION } from './course.ts';
import { entrancePose } from './entrance-pose.ts';
import { poleLines, SHOW_FURNITURE, SHOW_POLES } from './usual-trucks.ts';

/** What is known of a course before anything lies in its arena; the rest is usual. */
export interface BlankOptions {
  readonly title?: string;
  readonly unit?: LengthUnit;
  readonly arena?: Arena;
  readonly truck?: readonly Stock[];
  readonly horse?: string;
  readonly rulebook?: RuleChoice;
  readonly class?: Partial<ClassEntry>;
}

/** Sizes of a common show arena and of a dressage arena. The size in feet is an estimate. */
const ARENAS: Readonly<Record<LengthUnit, Arena>> = {
  ft: {
    title: 'Arena',
    length: feet(200),
    width: feet(100),
    entrance: { wall: 'west', at: feet(50), width: feet(12) },
  },
  m: { title: 'Arena', length: 60, width: 20, entrance: { wall: 'west', at: 10, width: 3 } },
};

const TRUCK: readonly Stock[] = [...poleLines(SHOW_POLES), ...SHOW_FURNITURE];

/** A course with an empty arena, a truck, and one layout. */
export function blankCourse(options: BlankOptions = {}): Course {
  const unit = options.unit ?? 'ft';
  const arena = options.arena ?? ARENAS[unit];
  return {
    format: FORMAT,
    version: VERSION,
    title: options.title ?? 'New course',
    unit,
    arena,
    truck: options.truck ?? TRUCK,
    horse: options.horse ?? 'stock-horse',
    rulebook: options.rulebook ?? { id: 'mule-association', house: {} },
    class: { show: '', title: '', level: 'open', date: '', entries: 0, ...options.class },
    layouts: [
      {
        id: 'layout-1',
        title: 'Layout 1',
        obstacles: [],
        constraints: [],
        ride: { start: entrancePose(arena), legs: [] },
      },
    ],
    current: 'layout-1',
    notes: '',
  };
}
