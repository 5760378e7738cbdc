import type { Mark } from '../../core/plane/mark.ts';
import { pathPoints } from '../../core/plane/path.ts';
import type { Point } from '../../core/plane/point.ts';
import type { LineElement } from '../../core/ride/line.ts';
import type { Survey } from '../../core/survey.ts';
import { useTheme } from '../arena/layers/use-theme.ts';
import { movedMarks } from '../arena/painters/moved-marks.ts';
import { PaintedMark } from '../set/drawing.tsx';

/** Of the picture, pixels. */
const WIDTH = 208;
const HEIGHT = 116;
const MARGIN = 5;
/** A pole is no thinner, and the line of travel as thin as this, pixels. */
const LEAST_POLE = 2;
const LINE = 1.1;
/** Chords of the line, metres. */
const CHORD = 0.5;

function lineMark({ move, gait, path }: LineElement): Mark {
  return { kind: 'line', ink: move === 'ride' ? gait : move, points: pathPoints(path, CHORD) };
}

/** Everything of a course that is to be seen at this size: its line under what lies there. Stripes are too fine. */
function thumbnailMarks({ line, pieces }: Survey): readonly Mark[] {
  const ways = line.elements.filter(({ path }) => path.length > 0).map(lineMark);
  const things = pieces.flatMap((piece) => movedMarks(piece.figure.marks, piece.pose));
  return [...ways, ...things.filter(({ ink }) => ink !== 'stripe')];
}

/** A course as it lies in its arena, to scale, small. Nothing is drawn while the survey is awaited. */
export function Thumbnail({ survey }: { readonly survey: Survey | undefined }) {
  const { inks, ground, beyond } = useTheme();
  const frame = { width: WIDTH, height: HEIGHT, viewBox: `0 0 ${WIDTH} ${HEIGHT}`, className: 'thumbnail' };
  if (survey === undefined) return <svg {...frame} aria-hidden="true" />;
  const { arena } = survey.course;
  const scale = Math.min((WIDTH - 2 * MARGIN) / arena.length, (HEIGHT - 2 * MARGIN) / arena.width);
  const [left, top] = [(WIDTH - arena.length * scale) / 2, (HEIGHT - arena.width * scale) / 2];
  const pixel = ({ x, y }: Point) => ({ x: left + x * scale, y: top + (arena.width - y) * scale });
  const to = (at: Point) => {
    const { x, y } = pixel(at);
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  };
  const { wall, at, width } = arena.entrance;
  const [from, until] = [at - width / 2, at + width / 2];
  const opening: Readonly<Record<typeof wall, readonly [Point, Point]>> = {
    west: [
      { x: 0, y: from },
      { x: 0, y: until },
    ],
    east: [
      { x: arena.length, y: from },
      { x: arena.length, y: until },
    ],
    south: [
      { x: from, y: 0 },
      { x: until, y: 0 },
    ],
    north: [
      { x: from, y: arena.width },
      { x: until, y: arena.width },
    ],
  };
  return (
    <svg {...frame} aria-hidden="true">
      <rect
        x={left}
        y={top}
        width={arena.length * scale}
        height={arena.width * scale}
        fill={ground}
        stroke={inks.rail}
        strokeWidth="2"
      />
      <path d={`M${opening[wall].map(to).join('L')}`} stroke={beyond} strokeWidth="3" />
      {thumbnailMarks(survey).map((mark, index) => (
        <PaintedMark
          // biome-ignore lint/suspicious/noArrayIndexKey: marks have no names and never change places.
          key={index}
          mark={mark}
          to={to}
          scale={scale}
          colour={inks[mark.ink]}
          least={LEAST_POLE}
          line={LINE}
        />
      ))}
    </svg>
  );
}
