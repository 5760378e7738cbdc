/** What lies on the ground as a table: a row for each piece. */
import { tradeTitle } from '../../core/course/obstacle-title.ts';
import type { PlacedPiece } from '../../core/course/placed.ts';
import { FOOT, type LengthUnit, type Metres } from '../../core/measure/quantity.ts';
import type { Point } from '../../core/plane/point.ts';
import { toWorld } from '../../core/plane/pose.ts';
import type { Survey } from '../../core/survey.ts';

/** A number of the table with the digits that mean something: a tenth of a millimetre, a hundredth of a degree. */
function decimal(value: number, digits: number): string {
  // Adding 0 turns −0 into 0.
  return String(Number(value.toFixed(digits)) + 0);
}

const UNITS: Readonly<Record<LengthUnit, { readonly size: Metres; readonly digits: number }>> = {
  ft: { size: FOOT, digits: 4 },
  m: { size: 1, digits: 4 },
};

/** The places of a piece: both ends of its middle line, or the middle of a small thing. */
function placesOf({ kind, pose, figure }: PlacedPiece): readonly [Point] | readonly [Point, Point] {
  if (kind.extent === 'small') return [pose];
  return [toWorld(pose, { x: -figure.length / 2, y: 0 }), toWorld(pose, { x: figure.length / 2, y: 0 })];
}

/** Of a long thing from its first end to its second, of a small one where it faces: degrees, counter-clockwise from +x, 0 to 360. */
function headingOf({ pose }: PlacedPiece): string {
  const degrees = decimal(((((pose.angle * 180) / Math.PI) % 360) + 360) % 360, 2);
  return degrees === '360' ? '0' : degrees;
}

/** Heads and rows as texts; places are measured from the datum corner. The course's own unit comes first, then metres. */
export function pieceTable(survey: Survey): {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
} {
  const { course, layout, numbers } = survey;
  const units: readonly LengthUnit[] = course.unit === 'm' ? ['m'] : ['ft', 'm'];
  const titles = new Map(
    layout.obstacles.map((obstacle) => [obstacle.id, obstacle.name ?? tradeTitle(obstacle, layout)]),
  );
  const rows = survey.pieces.map((piece) => {
    const { obstacle, figure } = piece;
    const [first, second] = placesOf(piece);
    const measures = [figure.length, figure.width, figure.height, first.x, first.y, second?.x, second?.y];
    return [
      (numbers.get(obstacle) ?? []).join(', '),
      titles.get(obstacle) ?? obstacle,
      piece.key,
      piece.kind.title,
      survey.letters.get(piece.key) ?? '',
      ...units.flatMap((unit) => {
        const { size, digits } = UNITS[unit];
        return measures.map((value) => (value === undefined ? '' : decimal(value / size, digits)));
      }),
      headingOf(piece),
    ];
  });
  const measured = [
    'Length',
    'Width or diameter',
    'Height',
    'First end x',
    'First end y',
    'Second end x',
    'Second end y',
  ];
  const heads = [
    ...['Number in the go', 'Obstacle', 'Piece', 'Kind', 'Letter'],
    ...units.flatMap((unit) => measured.map((head) => `${head} (${unit})`)),
    'Heading (degrees)',
  ];
  return { heads, rows };
}
