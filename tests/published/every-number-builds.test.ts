/** Every number that a book prints for a kind of obstacle, and what practice calls usual, builds an obstacle of that kind. */
import { describe, expect, test } from 'vitest';
import type { Limit, RuleBook } from '../../src/core/checks/check.ts';
import { bandOf, PRACTICE, RULEBOOKS, usualOf } from '../../src/core/checks/rulebooks/rulebooks.ts';
import { INCH } from '../../src/core/measure/quantity.ts';
import { buildKind } from '../../src/core/obstacles/build.ts';
import type { ObstacleKind } from '../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import { GAP_ITSELF } from '../../src/core/obstacles/traits.ts';
import type { Values } from '../../src/core/pieces/params.ts';

type Build = readonly [kind: ObstacleKind, param: string, rest?: Values];

const kindsWith = (param: string, isWanted: (kind: ObstacleKind) => boolean = () => true): readonly Build[] =>
  OBSTACLE_KINDS.filter((kind) => kind.params[param] !== undefined && isWanted(kind)).map((kind) => [kind, param]);
const named =
  (id: string): ((kind: ObstacleKind) => boolean) =>
  (kind) =>
    kind.id === id;
const atGait = (builds: readonly Build[], gait: string): readonly Build[] =>
  builds.map(([kind, param]): Build => [kind, param, { gait }]);
const gapped = kindsWith('gap', (kind) => kind.gapParam === GAP_ITSELF && kind.params.gait !== undefined);
const serpentine = kindsWith('gap', named('serpentine'));
const isLane = ({ family }: ObstacleKind): boolean => family === 'backing';

/** The parameters that a limit is about, by its name. What is measured on single pieces by hand is not here. */
const BUILDS: Readonly<Record<string, readonly Build[]>> = {
  'gap.walk': atGait(gapped, 'walk'),
  'gap.walk.recommended': atGait(gapped, 'walk'),
  'gap.jog': atGait(gapped, 'jog'),
  'gap.lope': atGait(gapped, 'lope'),
  'poles.count': kindsWith('poles', named('run')),
  'back.width': kindsWith('width', isLane),
  'back.raised.width': kindsWith('width', isLane),
  'side-pass.parallel': kindsWith('gap', named('side-pass-between')),
  'serpentine.walk': atGait(serpentine, 'walk'),
  'serpentine.jog': atGait(serpentine, 'jog'),
  'serpentine.markers': kindsWith('markers', named('serpentine')),
  'box.side': kindsWith('side', named('box')),
  'square.pole': kindsWith('length', named('square-marker')),
  'gate.opening': kindsWith('opening', named('gate')),
  'gate.height': kindsWith('height', named('gate')),
  'bridge.width': kindsWith('width', named('bridge')),
  'bridge.length': kindsWith('length', named('bridge')),
  'water-box.width': kindsWith('width', named('water-box')),
  'water-box.length': kindsWith('length', named('water-box')),
  'pole.length': kindsWith('length', named('run')),
  'fan.inner-gap': kindsWith('innerGap', named('fan')),
  'marker.clear': kindsWith('clear', named('spoke')),
};

const partsOf = ({ limits, levels = {}, ponies = {} }: RuleBook): readonly (readonly [string, Limit])[] =>
  [limits, ponies, ...Object.values(levels)].flatMap((part) => Object.entries(part));

interface Row {
  readonly book: string;
  readonly limit: string;
  readonly kind: string;
  readonly value: number;
  readonly build: Build;
}

const ROWS: readonly Row[] = [...RULEBOOKS, PRACTICE].flatMap((book) =>
  partsOf(book).flatMap(([limit, printed]) => {
    const { least, most } = bandOf(printed);
    const usual = usualOf(limit, { id: book.id, house: {} });
    const values = [least, most, usual].filter((value) => value !== undefined);
    return (BUILDS[limit] ?? []).flatMap((build) =>
      values.map((value): Row => ({ book: book.id, limit, kind: build[0].id, value, build })),
    );
  }),
);

describe('a number that a book prints', () => {
  test('is tried for every limit that a parameter sets', () => {
    expect(Object.values(BUILDS).every((builds) => builds.length > 0)).toBe(true);
    expect(new Set(ROWS.map(({ book }) => book)).size).toBe(RULEBOOKS.length);
    expect(ROWS.length).toBeGreaterThan(100);
  });

  test.each(ROWS)('$book, $limit: a $kind with $value m', ({ value, build: [kind, param, rest = {}] }) => {
    const asked = { ...rest, [param]: value };
    const built = buildKind(kind, asked);
    if (built.kind === 'built') return;
    // What else has to give is in the refusal; the number of the book stays.
    const helped = buildKind(kind, { ...built.nearest, ...asked });
    expect(helped.kind, `${built.why} (${(value / INCH).toFixed(2)} in)`).toBe('built');
  });
});
