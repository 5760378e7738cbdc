import type { Layout, Leg } from '../course/course.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { pairedObstacles } from './paired-obstacles.ts';

/** What differs in the go about one obstacle: numbers are 1 for the first of the go. */
export type GoDifference =
  | { readonly kind: 'added' | 'left-out'; readonly obstacle: Obstacle; readonly number: number }
  | { readonly kind: 'order'; readonly obstacle: Obstacle; readonly from: number; readonly to: number }
  | {
      readonly kind: 'way' | 'gait' | 'approach' | 'lead';
      readonly obstacle: Obstacle;
      readonly number: number;
      /** The way by its title; a lead that nobody chose is null. */
      readonly from: string | null;
      readonly to: string | null;
    };

interface NumberedLeg {
  readonly leg: Leg;
  readonly number: number;
  readonly obstacle: Obstacle;
}

function numberedLegs({ obstacles, ride }: Layout): readonly NumberedLeg[] {
  const byId = new Map(obstacles.map((obstacle) => [obstacle.id, obstacle]));
  return ride.legs.flatMap((leg, i) => {
    const obstacle = byId.get(leg.obstacle);
    return obstacle === undefined ? [] : [{ leg, number: i + 1, obstacle }];
  });
}

/** Indices of a longest rising run among numbers: what kept its order. */
function risingIndices(numbers: readonly number[]): ReadonlySet<number> {
  const lengths: number[] = [];
  const before: (number | undefined)[] = [];
  for (const [i, value] of numbers.entries()) {
    let [length, last]: [number, number | undefined] = [1, undefined];
    for (let j = 0; j < i; j += 1) {
      if ((numbers[j] ?? 0) < value && (lengths[j] ?? 0) + 1 > length) [length, last] = [(lengths[j] ?? 0) + 1, j];
    }
    lengths.push(length);
    before.push(last);
  }
  const kept = new Set<number>();
  for (let at = lengths.indexOf(Math.max(...lengths)) as number | undefined; at !== undefined && at >= 0; ) {
    kept.add(at);
    at = before[at];
  }
  return kept;
}

function passageTitle({ leg, obstacle }: NumberedLeg): string {
  return obstacle.passages.find(({ id }) => id === leg.passage)?.title ?? leg.passage;
}

function riddenOtherwise(before: NumberedLeg, after: NumberedLeg): readonly GoDifference[] {
  const { obstacle, number } = after;
  const asked = [
    ['way', passageTitle(before), passageTitle(after)],
    ['approach', before.leg.approach, after.leg.approach],
    ['gait', before.leg.gait, after.leg.gait],
    ['lead', before.leg.lead ?? null, after.leg.lead ?? null],
  ] as const;
  return asked.flatMap(([kind, from, to]) => (from === to ? [] : [{ kind, obstacle, number, from, to }]));
}

/** What a rider finds different in the go of layout `to` after that of `from`: what is left out, then in the order of `to`. */
export function goDifferences(from: Layout, to: Layout): readonly GoDifference[] {
  const partners = new Map(pairedObstacles(from, to).pairs.map(({ before, after }) => [after, before]));
  const left = [...numberedLegs(from)];
  const matched = numberedLegs(to).map((after) => {
    // An obstacle that is ridden twice: its first time is compared with its first time.
    const place = left.findIndex(({ obstacle }) => obstacle === partners.get(after.obstacle));
    return { after, before: place < 0 ? undefined : left.splice(place, 1)[0] };
  });
  const both = matched.flatMap(({ after, before }) => (before === undefined ? [] : [{ after, before }]));
  const inOrder = risingIndices(both.map(({ before }) => before.number));
  const moved = new Set(both.filter((_, i) => !inOrder.has(i)).map(({ after }) => after));
  return [
    ...left.map(({ obstacle, number }): GoDifference => ({ kind: 'left-out', obstacle, number })),
    ...matched.flatMap(({ after, before }): readonly GoDifference[] => {
      const { obstacle, number } = after;
      if (before === undefined) return [{ kind: 'added', obstacle, number }];
      const order: readonly GoDifference[] = moved.has(after)
        ? [{ kind: 'order', obstacle, from: before.number, to: number }]
        : [];
      return [...order, ...riddenOtherwise(before, after)];
    }),
  ];
}
